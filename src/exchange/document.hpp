// An assembly as the kernel's document of shapes, names, colours and places.
//
// Units: millimetres. Frame: the assembly's.
// Range and errors: std::invalid_argument for an assembly without items, a colour outside 0 to 1, or two
// different parts of one name; SolidError from meshing.
// Guarantee: parts of one name that share a shape and colour are one product with several placements.
// Labels stand in the order of the items.
// Source: OpenCASCADE 7.6.3 extended data.
#pragma once

#include "purgewright/exchange/part.hpp"
#include "purgewright/solids/kernel/mesh.hpp"

#include <TDocStd_Document.hxx>

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace purgewright::exchange {

struct DocumentOptions {
  bool keyed_names = false; // labels carry product_key() and use_key() for a writer that names them itself
  std::optional<solids::kernel::MeshOptions> mesh{};
};

// For each item the first item of the same part.
std::vector<std::size_t> first_of_part(Assembly const &assembly);

std::string product_key(std::size_t item);
std::string use_key(std::size_t item);
inline constexpr char assembly_key[] = "assembly";

Handle(TDocStd_Document) document(Assembly const &assembly, DocumentOptions const &options);

} // namespace purgewright::exchange
