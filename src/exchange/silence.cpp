#include "purgewright/exchange/silence.hpp"

#include <Message.hxx>
#include <Message_Messenger.hxx>

namespace purgewright::exchange {

void silence_kernel() {
  Message::DefaultMessenger()->ChangePrinters().Clear();
}

} // namespace purgewright::exchange
