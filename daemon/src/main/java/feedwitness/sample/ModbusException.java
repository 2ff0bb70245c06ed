package feedwitness.sample;

import feedwitness.profile.Protocol.Read;

/** Exception codes in words (Modbus application protocol V1.1b3, section 7). */
final class ModbusException {
  private ModbusException() {}

  static String words(int code, Read read) {
    String registers =
        "registers %d to %d with function %d"
            .formatted(read.start(), read.start() + read.count() - 1, read.function());
    return switch (code) {
      case 1 ->
          "illegal function (exception 1): the instrument does not know function %d; try function %d"
              .formatted(read.function(), 7 - read.function());
      case 2 ->
          "illegal data address (exception 2): the profile asks for %s, and the instrument does not have them all"
              .formatted(registers);
      case 3 ->
          "illegal data value (exception 3): the instrument does not give %s in one read; read fewer at a time"
              .formatted(registers);
      case 4 -> "device failure (exception 4): the instrument reports a fault of its own";
      case 5 -> "acknowledge (exception 5): the instrument needs longer; ask again";
      case 6 -> "busy (exception 6): the instrument is doing something else; ask again";
      case 8 -> "memory parity error (exception 8): the instrument reports a fault of its own";
      case 10 -> "gateway path unavailable (exception 10): check the gateway's settings";
      case 11 ->
          "gateway target does not respond (exception 11): check the instrument behind the gateway";
      default ->
          "exception %d, asked for %s; see the instrument's manual".formatted(code, registers);
    };
  }
}
