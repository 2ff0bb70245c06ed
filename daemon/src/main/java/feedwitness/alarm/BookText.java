package feedwitness.alarm;

import feedwitness.quantity.Stamp;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Standings as text, one a line, fields separated by tabs. */
final class BookText {
  private static final String HEADER = "alarms 1";

  private BookText() {}

  static String write(List<Standing> standings) {
    StringBuilder text = new StringBuilder(HEADER);
    for (Standing standing : standings) {
      text.append('\n').append(write(standing));
    }
    return text.toString();
  }

  static String write(Standing standing) {
    Condition condition = standing.condition();
    AlarmKind kind = condition.kind();
    Fields.Writer out =
        new Fields.Writer()
            .add(condition.subject())
            .add(kind.code(), kind.title(), kind.priority().name())
            .add(kind.consequence(), kind.remedy())
            .add(kind.onDelay().toString(), kind.offDelay().toString())
            .add(condition.presence().name())
            .add(Double.toString(condition.value()), Double.toString(condition.limit()))
            .add(condition.unit(), condition.words())
            .add(condition.suppressed())
            .add(standing.state().name(), Long.toString(standing.heldNanos()))
            .add(stamp(standing.seen()))
            .add(standing.raised().map(BookText::stamp))
            .add(stamp(standing.changed()));
    aside(out, standing.shelf());
    aside(out, standing.out());
    out.add(standing.reply().map(Reply::who)).add(standing.reply().map(Reply::note));
    out.add(standing.reply().map(reply -> stamp(reply.at())));
    out.add(standing.reply().map(reply -> reply.before().name()));
    return out.line();
  }

  private static void aside(Fields.Writer out, Optional<Aside> aside) {
    out.add(aside.map(Aside::who)).add(aside.map(Aside::note));
    out.add(aside.map(a -> stamp(a.at()))).add(aside.flatMap(Aside::until).map(Instant::toString));
  }

  private static String stamp(Stamp stamp) {
    return "%d %d %d %d %b"
        .formatted(
            stamp.boot(),
            stamp.sequence(),
            stamp.monotonicNanos(),
            stamp.wallMillis(),
            stamp.dated());
  }

  static List<Standing> read(String text) {
    String[] lines = text.split("\n", -1);
    if (!lines[0].equals(HEADER)) {
      throw new IllegalArgumentException("the alarms kept are of an unknown form");
    }
    List<Standing> standings = new ArrayList<>();
    for (int i = 1; i < lines.length; i++) {
      standings.add(standing(lines[i]));
    }
    return standings;
  }

  static Standing standing(String line) {
    Fields.Reader in = new Fields.Reader(line);
    try {
      Standing standing =
          new Standing(
              condition(in),
              State.valueOf(in.text()),
              Long.parseLong(in.text()),
              stamp(in.text()),
              in.optional().map(BookText::stamp),
              stamp(in.text()),
              aside(in),
              aside(in),
              reply(in));
      in.end();
      return standing;
    } catch (java.time.DateTimeException | java.util.NoSuchElementException e) {
      throw new IllegalArgumentException("an alarm that was kept is damaged", e);
    }
  }

  private static Condition condition(Fields.Reader in) {
    String subject = in.text();
    AlarmKind kind =
        new AlarmKind(
            in.text(),
            in.text(),
            Priority.valueOf(in.text()),
            in.text(),
            in.text(),
            Duration.parse(in.text()),
            Duration.parse(in.text()));
    return new Condition(
        subject,
        kind,
        Presence.valueOf(in.text()),
        Double.parseDouble(in.text()),
        Double.parseDouble(in.text()),
        in.text(),
        in.text(),
        in.optional());
  }

  private static Optional<Aside> aside(Fields.Reader in) {
    Optional<String> who = in.optional();
    Optional<String> note = in.optional();
    Optional<Stamp> at = in.optional().map(BookText::stamp);
    Optional<Instant> until = in.optional().map(Instant::parse);
    return who.map(w -> new Aside(w, note.orElseThrow(), at.orElseThrow(), until));
  }

  private static Optional<Reply> reply(Fields.Reader in) {
    Optional<String> who = in.optional();
    Optional<String> note = in.optional();
    Optional<Stamp> at = in.optional().map(BookText::stamp);
    Optional<State> before = in.optional().map(State::valueOf);
    return who.map(w -> new Reply(w, note.orElseThrow(), at.orElseThrow(), before.orElseThrow()));
  }

  private static Stamp stamp(String text) {
    String[] parts = text.split(" ", -1);
    if (parts.length != 5) {
      throw new IllegalArgumentException("'%s' is no stamp".formatted(text));
    }
    return new Stamp(
        Integer.parseInt(parts[0]),
        Long.parseLong(parts[1]),
        Long.parseLong(parts[2]),
        Long.parseLong(parts[3]),
        Boolean.parseBoolean(parts[4]));
  }
}
