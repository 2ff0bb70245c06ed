package feedwitness.sample;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.profile.Fields;
import feedwitness.profile.Fields.OctetOrder;
import feedwitness.profile.Fields.Place.Registers;
import feedwitness.profile.Protocol;
import feedwitness.profile.Protocol.Read;
import feedwitness.quantity.Octets;
import feedwitness.sample.DecodeOutcome.Decoded;
import feedwitness.sample.DecodeOutcome.Refused;
import java.util.List;

/** Reads numbers out of the registers of Modbus replies. */
final class ModbusDecoder implements Decoder {
  private static final int EXCEPTION_BIT = 0x80;
  private static final int EXCEPTION_LENGTH = 5;

  /** Where the registers of a reply begin: after unit, function and count of octets. */
  private static final int FIRST_REGISTER = 3;

  private static final int AROUND_REGISTERS = 5;

  private final List<Read> reads;
  private final Fields fields;

  ModbusDecoder(Protocol.Modbus modbus, Fields fields) {
    this.reads = modbus.reads();
    this.fields = fields;
  }

  @Override
  public DecodeOutcome decode(List<Frame> frames) {
    for (int i = 0; i < Math.min(frames.size(), reads.size()); i++) {
      Octets reply = frames.get(i).octets();
      Read read = reads.get(i);
      if (isException(reply, read)) {
        return new Refused(
            Missing.Cause.INSTRUMENT_REFUSED, ModbusException.words(reply.at(2), read));
      }
      if (!answers(reply, read)) {
        return unreadable(
            "%s is no reply to function %d, %d registers from %d"
                .formatted(reply.toHex(), read.function(), read.count(), read.start()));
      }
    }
    if (frames.size() != reads.size()) {
      return unreadable(
          "%d replies where the profile asks for %d".formatted(frames.size(), reads.size()));
    }
    return read(frames);
  }

  private Decoded read(List<Frame> frames) {
    Registers place = (Registers) fields.conductivity();
    double conductivity = number(place, frames);
    String remark = remark("conductivity", place, conductivity);
    double temperature = Double.NaN;
    if (fields.temperature().isPresent()) {
      Registers other = (Registers) fields.temperature().get();
      temperature = number(other, frames);
      remark = Remarks.join(remark, remark("temperature", other, temperature));
    }
    return new Decoded(
        new Reading(
            finiteOrNaN(conductivity),
            fields.conductivityUnit(),
            finiteOrNaN(temperature),
            fields.temperatureUnit(),
            contact(frames)),
        remark);
  }

  private Contact contact(List<Frame> frames) {
    return fields
        .contact()
        .map(at -> Contacts.of(at, number((Registers) at.place(), frames)))
        .orElse(Contact.NONE);
  }

  /** Infinity is no number an instrument can have measured: it stands for none. */
  private static double finiteOrNaN(double value) {
    return Double.isFinite(value) ? value : Double.NaN;
  }

  private static String remark(String field, Registers place, double value) {
    return Double.isFinite(value) ? "" : Remarks.none(field, place, String.valueOf(value));
  }

  /** The number at that place; the profile guarantees that a read covers it. */
  private double number(Registers place, List<Frame> frames) {
    for (int i = 0; i < reads.size(); i++) {
      Read read = reads.get(i);
      if (read.covers(place)) {
        int from = FIRST_REGISTER + 2 * (place.register() - read.start());
        int raw = raw(frames.get(i).octets(), from, place.type().registers(), place.order());
        return value(raw, place.type()) * place.scale() + place.offset();
      }
    }
    return Double.NaN;
  }

  /** The bits of a number; for one register, in the lower half. */
  private static int raw(Octets reply, int from, int registers, OctetOrder order) {
    int raw = 0;
    int swapOctets = order == OctetOrder.BADC || order == OctetOrder.DCBA ? 1 : 0;
    int swapRegisters = order == OctetOrder.CDAB || order == OctetOrder.DCBA ? 2 : 0;
    for (int i = 0; i < 2 * registers; i++) {
      raw = raw << 8 | reply.at(from + (i ^ swapOctets ^ swapRegisters));
    }
    return raw;
  }

  private static double value(int raw, Fields.Type type) {
    return switch (type) {
      case INT16 -> (short) raw;
      case UINT16 -> raw & 0xffff;
      case INT32 -> raw;
      case UINT32 -> raw & 0xffff_ffffL;
      case FLOAT32 -> Float.intBitsToFloat(raw);
    };
  }

  private static boolean isException(Octets reply, Read read) {
    return reply.length() == EXCEPTION_LENGTH && reply.at(1) == (read.function() | EXCEPTION_BIT);
  }

  private static boolean answers(Octets reply, Read read) {
    return reply.length() == AROUND_REGISTERS + 2 * read.count()
        && reply.at(1) == read.function()
        && reply.at(2) == 2 * read.count();
  }

  private static Refused unreadable(String text) {
    return new Refused(Missing.Cause.UNREADABLE, text);
  }
}
