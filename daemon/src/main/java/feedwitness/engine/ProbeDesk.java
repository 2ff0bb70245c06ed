package feedwitness.engine;

import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.PointName;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import java.time.Duration;
import java.util.List;

/** Setting up a probe from the page, without an editor. May block for seconds. */
public interface ProbeDesk {

  /** Serial ports there are, in stable order. */
  List<PortCandidate> ports();

  /** Device profiles there are, ours and the user's own. */
  List<ProfileChoice> profiles();

  /**
   * Listens on a port for a while and reports what arrived, line by line. Refuses politely when the
   * port is in use by this service or cannot be opened.
   */
  Preview listen(LinkAddress link, String profile, int unit, Duration howLong);

  /** Writes the generated configuration and starts the point. */
  SaveOutcome save(ProbeDraft draft);

  /**
   * A serial port.
   *
   * @param path the stable path to use
   * @param description from USB, may be empty
   * @param usable whether this service may open it now
   * @param remark what to do if not usable; otherwise empty
   */
  record PortCandidate(String path, String description, boolean usable, String remark) {}

  /**
   * A profile.
   *
   * @param needsUnit whether a bus address must be given
   * @param compensates whether the instrument already refers to 25 °C
   * @param conductivityUnit symbol of the unit it sends
   */
  record ProfileChoice(
      String name, String title, boolean needsUnit, boolean compensates, String conductivityUnit) {}

  /**
   * What was heard.
   *
   * @param trouble why nothing could be heard; empty if the port could be opened
   */
  record Preview(String trouble, List<Heard> heard) {
    public Preview {
      heard = List.copyOf(heard);
    }
  }

  /**
   * One run of octets.
   *
   * @param verdict in words: a reading, or why it was rejected
   */
  record Heard(String hex, String text, boolean understood, String verdict) {}

  /**
   * What the page asks for.
   *
   * @param link empty text is not allowed; a point without a probe has none, see {@code handTyped}
   * @param conductivityUnit symbol if it differs from the profile's; empty for the profile's own
   * @param compensates what the user says about the instrument; overrides the profile
   */
  record ProbeDraft(
      PointName name,
      String title,
      MeasuringPoint.Place place,
      boolean handTyped,
      String link,
      String profile,
      int unit,
      String conductivityUnit,
      boolean compensates,
      CompensationChoice compensation) {}

  /** What became of a draft. */
  sealed interface SaveOutcome {
    /** Written and running. */
    record Saved(String file) implements SaveOutcome {}

    /** Nothing written. */
    record Refused(List<FieldProblem> problems) implements SaveOutcome {
      public Refused {
        problems = List.copyOf(problems);
      }
    }
  }

  /** One thing wrong with a draft. */
  record FieldProblem(String field, String message) {}
}
