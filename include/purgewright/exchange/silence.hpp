// Keeps the kernel from printing.
//
// Units: none. Frame: none. Range and errors: none.
// Guarantee: after the call the kernel's default messenger has no printers; calling again changes nothing.
// Every reader and writer of this floor calls it, and the program may do so at its start.
// Source: OpenCASCADE 7.6.3, whose writers print coloured text to stdout.
#pragma once

namespace purgewright::exchange {

void silence_kernel();

} // namespace purgewright::exchange
