#include "purgewright/cli/app.hpp"

int main(int argc, char **argv) {
  return static_cast<int>(purgewright::cli::run(argc, argv));
}
