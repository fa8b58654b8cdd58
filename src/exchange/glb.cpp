#include "purgewright/exchange/glb.hpp"

#include "exchange/document.hpp"
#include "exchange/guard.hpp"
#include "purgewright/exchange/silence.hpp"
#include "purgewright/files/file.hpp"

#include <Message_ProgressRange.hxx>
#include <RWGltf_CafWriter.hxx>
#include <TColStd_IndexedDataMapOfStringString.hxx>

#include <cstdint>
#include <cstring>
#include <string>

namespace purgewright::exchange {

namespace {

// The kernel's writer does not notice every short write; the format carries its own length.
void require_whole(std::filesystem::path const &path) {
  constexpr std::size_t length_at = 8;
  std::string const bytes = files::read(path);
  std::uint32_t length = 0;
  if (bytes.size() >= length_at + sizeof length)
    std::memcpy(&length, bytes.data() + length_at, sizeof length);
  if (length != bytes.size() || bytes.compare(0, 4, "glTF") != 0)
    throw files::FileError(path, "the file is not whole");
}

// The kernel says no reason: what stops a file larger than any of ours has one.
[[noreturn]] void fail_to_write(std::filesystem::path const &path) {
  constexpr std::size_t largest = std::size_t{64} << 20; // bytes
  files::write(path, std::string(largest, ' '));
  throw files::FileError(path, "the file cannot be written in full");
}

} // namespace

void write_glb(std::filesystem::path const &path, Assembly const &assembly, GlbOptions const &options) {
  silence_kernel();
  files::write(path, ""); // the kernel does not say why a file will not open
  guarded(assembly.name, "write glb", [&] {
    Handle(TDocStd_Document) const shapes = document(
        assembly,
        {.mesh = solids::kernel::MeshOptions{.deflection = options.deflection, .angle = options.angle}});
    RWGltf_CafWriter writer(path.c_str(), Standard_True);
    constexpr double metres_per_millimetre = 1e-3;
    writer.ChangeCoordinateSystemConverter().SetInputLengthUnit(metres_per_millimetre);
    writer.ChangeCoordinateSystemConverter().SetInputCoordinateSystem(RWMesh_CoordinateSystem_Zup);
    writer.SetMergeFaces(true);
    if (!writer.Perform(shapes, TColStd_IndexedDataMapOfStringString(), Message_ProgressRange()))
      fail_to_write(path);
  });
  require_whole(path);
}

} // namespace purgewright::exchange
