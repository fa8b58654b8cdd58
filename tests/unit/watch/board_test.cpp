#include "watch/board.hpp"

#include <catch2/catch.hpp>

#include <chrono>
#include <thread>

using namespace std::chrono_literals;
using purgewright::watch::Board;
using purgewright::watch::Parts;

TEST_CASE("news is what has been put up since, and the same again is none", "[unit][watch]") {
  Board board(2);
  board.put(1, {{"answer", "No"}, {"bench", "15 s"}});
  const auto all = board.since(1, 0);
  CHECK(all.parts == Parts{{"answer", "No"}, {"bench", "15 s"}});
  board.put(1, {{"answer", "Yes"}, {"bench", "15 s"}});
  const auto news = board.since(1, all.version);
  CHECK(news.parts == Parts{{"answer", "Yes"}});
  board.put(1, {{"answer", "Yes"}});
  CHECK(board.since(1, news.version).parts.empty());
  CHECK(board.since(1, news.version).version == news.version);
  CHECK(board.since(0, 0).parts.empty());
  CHECK_THROWS_AS(board.since(2, 0), std::out_of_range);
}

TEST_CASE("an empty part is news too", "[unit][watch]") {
  Board board(1);
  board.put(0, {{"faults", ""}});
  const auto first = board.since(0, 0);
  CHECK(first.parts.contains("faults"));
  board.put(0, {{"faults", "one"}});
  board.put(0, {{"faults", ""}});
  CHECK(board.since(0, first.version).parts == Parts{{"faults", ""}});
}

TEST_CASE("who waits gets the news, or the end", "[unit][watch]") {
  Board board(1);
  std::thread putting([&] {
    std::this_thread::sleep_for(20ms);
    board.put(0, {{"answer", "Yes"}});
  });
  CHECK(board.wait(0, 0, 10s).parts == Parts{{"answer", "Yes"}});
  putting.join();
  const auto version = board.since(0, 0).version;
  CHECK(board.wait(0, version, 5ms).parts.empty());
  std::thread closing([&] {
    std::this_thread::sleep_for(20ms);
    board.close();
  });
  CHECK(board.wait(0, version, 10s).parts.empty());
  closing.join();
}
