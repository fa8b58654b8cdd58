#include "purgewright/exchange/glb.hpp"

#include "exchange/document.hpp"
#include "exchange/file.hpp"
#include "exchange/guard.hpp"
#include "purgewright/exchange/file_error.hpp"
#include "purgewright/exchange/silence.hpp"

#include <Message_ProgressRange.hxx>
#include <RWGltf_CafWriter.hxx>
#include <TColStd_IndexedDataMapOfStringString.hxx>

namespace purgewright::exchange {

void write_glb(std::filesystem::path const &path, Assembly const &assembly, GlbOptions const &options) {
  silence_kernel();
  write_bytes(path, ""); // the kernel does not say why a file will not open
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
      throw FileError(path, "the file cannot be written in full");
  });
}

} // namespace purgewright::exchange
