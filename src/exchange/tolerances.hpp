// Semantic tolerances of a part in the kernel's document.
//
// Units: millimetres. Frame: the part's. Range and errors: SolidError when no face holds a point.
// Guarantee: labels stand in the order of the part's fits, sizes, distances and geometric tolerances.
// Source: ISO 10303-242 dimensions and geometric tolerances by OpenCASCADE 7.6.3, which knows neither threads
// nor surface texture: those travel as properties.
#pragma once

#include "purgewright/exchange/part.hpp"

#include <TDocStd_Document.hxx>

namespace purgewright::exchange {

// The part alone, named by product_key(0), with its tolerances.
Handle(TDocStd_Document) document_with_tolerances(Part const &part);

} // namespace purgewright::exchange
