package feedwitness.watch.drift;

import feedwitness.feed.FeedStock;
import feedwitness.site.FeedLine;
import feedwitness.site.Mixer;
import feedwitness.watch.diagnosis.Diagnosis;
import feedwitness.watch.diagnosis.Evidence;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.util.Locale;

/** What is said of a feed line, in one sentence: item, value, limit, unit, remedy. */
final class FindingWords {
  /** Sizes are shown to a tenth of a percent. */
  private static final double SHOWN = 0.05;

  private final FeedLine line;

  FindingWords(FeedLine line) {
    this.line = line;
  }

  String shifted(double percent, double plusMinus, Stage stage, boolean gradual, Diagnosis why) {
    String what =
        put(
            "%.1f %% %s than normal%s%s",
            Math.abs(percent),
            thing(percent),
            Double.isNaN(plusMinus) ? "" : put(" (± %.1f %%)", plusMinus),
            gradual ? ", little by little" : "");
    return say(put("%s, %s; %s", what, limit(stage, Math.abs(percent)), advice(why)));
  }

  private String thing(double percent) {
    if (line.mixer() instanceof Mixer.None) {
      return (percent < 0 ? "lower" : "higher") + " strength";
    }
    return (percent < 0 ? "less" : "more") + " feed is mixed in";
  }

  private String limit(Stage stage, double percent) {
    return switch (stage) {
      case ALARM -> limit("alarm", line.limits().alarmPercent(), percent);
      case NOTICE -> limit("notice", line.limits().noticePercent(), percent);
      default -> put("below the notice from %.0f %%", line.limits().noticePercent());
    };
  }

  /** A size that only may well have reached its limit is not put forward as one that has. */
  private static String limit(String what, double limit, double percent) {
    return percent < limit - SHOWN
        ? put("perhaps as much as the %s limit of %.0f %%", what, limit)
        : put("%s from %.0f %%", what, limit);
  }

  private static String advice(Diagnosis why) {
    return why.causes().isEmpty()
        ? "look at the chart"
        : why.words() + ". To decide: " + String.join(", then ", why.tests());
  }

  String plain(double conductivity, double source, Diagnosis why) {
    return say(
        put(
            "%.2f mS/cm is the source water's %.2f mS/cm, no feed is mixed in; %s",
            conductivity, source, advice(why)));
  }

  String plainAsAnnounced(double conductivity) {
    return say(put("plain water, %.2f mS/cm, as was announced", conductivity));
  }

  String checked(Evidence.Check made, boolean open) {
    String result =
        switch (made) {
          case PASSED -> "line probe passed its check in a standard";
          case FAILED -> "line probe failed its check in a standard";
          case NONE -> "line probe was checked in a standard, which can't tell";
        };
    return say(
        open && made != Evidence.Check.NONE
            ? result + "; the change that lasts is judged with it"
            : result);
  }

  String offRecipe(double percent, double strength) {
    return say(
        put(
            "what is normal here is %.1f %% %s than %.2f mS/cm needs, alarm from %.0f %%; check ratio,"
                + " stock and source strength in the configuration, then the line probe in a"
                + " standard",
            Math.abs(percent),
            percent < 0 ? "less feed" : "more feed",
            strength,
            line.limits().alarmPercent()));
  }

  String offStock(double percent, double within, double strength) {
    String by = line.stock().filter(FeedStock::measured).isPresent() ? "measured stock" : "recipe";
    return say(
        put(
            "first waterings carry %.0f %% (± %.0f %%) %s than the %.2f mS/cm of the %s, alarm from"
                + " %.0f %%; check the ratio that is set, then the stock by a measured dilution, then"
                + " the line probe in a standard",
            Math.abs(percent),
            within,
            percent < 0 ? "less feed" : "more feed",
            strength,
            by,
            line.limits().alarmPercent()));
  }

  String unsteady(Diagnosis why) {
    return say(
        "strength differs from one irrigation event to the next and is like none that is known; "
            + advice(why));
  }

  String over() {
    return say("back to normal");
  }

  String overByChange(LineChange change) {
    return say("what was told before ends here: " + change.words());
  }

  String plainOver() {
    return say("feed is mixed in again");
  }

  String learnt(int events, double percent) {
    return say(
        put(
            "what is normal has been learnt from %d irrigation events, which scatter by ± %.1f %%",
            events, percent));
  }

  String strengthLearnt(double strength) {
    return say(
        put(
            "%.2f mS/cm keeps coming back and is now taken for a strength of its own; write it under"
                + " strengths if it is meant, check the injector if it is not",
            strength));
  }

  String sourceSilent(double used) {
    return say(
        put(
            "source probe has said nothing for %.0f h; its usual %.2f mS/cm is used, and a change of"
                + " source water would look like a change of feed; check the source probe",
            SourceWater.FRESH / 3600, used));
  }

  String sourceUnknown(boolean configured) {
    return say(
        configured
            ? "source water is not measured; the configured source-strength is used instead"
            : "source water is not known; the whole strength is judged, and plain water or a change"
                + " of source cannot be told from a change of feed; give the feed line a source"
                + " point or a source-strength");
  }

  String sourceAppeared() {
    return say("source water is measured from now on; what is normal is learnt anew");
  }

  String changed(LineChange change, boolean during) {
    String anew =
        change == LineChange.TURNED_OFF
            ? "nothing is judged until the next change"
            : change.rebaselines() ? "what is normal is learnt anew" : "what is normal stays";
    return say(
        put(
            "%s; %s%s",
            change.words(), anew, during ? "; the irrigation event under way is not judged" : ""));
  }

  String feedWhileOff(double conductivity, double source) {
    return say(
        put(
            "%.2f mS/cm flows where the source has %.2f mS/cm, though the injector is set to inject"
                + " nothing; note the ratio it is really set to",
            conductivity, source));
  }

  String clock(double seconds) {
    return say(
        put(
            "clock jumped by %+.0f s; times before lie on the old clock, nothing is judged by them",
            seconds));
  }

  private static String put(String text, Object... values) {
    return String.format(Locale.ROOT, text, values);
  }

  private String say(String what) {
    return String.format(Locale.ROOT, "%s: %s", line.name(), what);
  }
}
