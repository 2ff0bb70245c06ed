package feedwitness.check;

import feedwitness.alarm.AlarmKind;
import feedwitness.alarm.Condition;
import feedwitness.alarm.Presence;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** What checks have to tell through the door for alarms; report it whenever it is judged. */
public final class CheckConditions {
  private CheckConditions() {}

  /**
   * Of one probe or meter.
   *
   * @param chart of its records
   * @param interval rule for the next check
   * @param desk knows whether it is being checked or out of its place
   * @param zone of the clock on the wall there
   */
  public static List<Condition> of(
      CheckSubject subject,
      ControlChart chart,
      CheckInterval interval,
      CheckDesk desk,
      Instant now,
      ZoneId zone) {
    CheckInterval.Due due = interval.due(chart, now, zone);
    // a probe set up today is not asked to be checked today
    boolean never =
        due.status() == CheckInterval.Status.NEVER_CHECKED
            && isThereSince(now.minus(interval.shortest()), subject, chart, desk);
    boolean overdue = due.status() == CheckInterval.Status.OVERDUE;
    String words = subject + ": " + due.words();
    Verdict last = desk.lastVerdict(subject);
    Optional<String> away = desk.outOfPlace(subject);
    Optional<String> checking =
        desk.suppressed(subject) ? Optional.of("it is being checked") : Optional.empty();
    return List.of(
        condition(
            subject, CheckKinds.DUE, never || due.status() == CheckInterval.Status.DUE, words),
        condition(subject, CheckKinds.OVERDUE, overdue, words).suppressed(checking),
        condition(
                subject,
                CheckKinds.FAILED,
                last == Verdict.FAIL,
                "%s: the last check left it at %s, tolerance ± %s"
                    .formatted(subject, lastError(chart), Say.percent(chart.tolerancePercent())))
            .suppressed(checking),
        condition(
            subject,
            CheckKinds.LOSING,
            chart.loss() == Loss.SURE,
            "%s: %s".formatted(subject, chart.words(zone))),
        condition(
            subject,
            CheckKinds.OUT_OF_PLACE,
            away.isPresent(),
            away.orElse(subject + " is in its place")));
  }

  private static boolean isThereSince(
      Instant time, CheckSubject subject, ControlChart chart, CheckDesk desk) {
    return chart
        .replaced()
        .map(at -> at.isBefore(time))
        .orElseGet(() -> desk.readsSince(subject, time));
  }

  private static String lastError(ControlChart chart) {
    return chart.points().stream()
        .filter(ChartPoint::counts)
        .reduce((a, b) -> b)
        .map(point -> Say.error(point.percent()))
        .orElse("no known error");
  }

  private static Condition condition(
      CheckSubject subject, AlarmKind kind, boolean active, String words) {
    return Condition.plain(
        alarmSubject(subject), kind, active ? Presence.ACTIVE : Presence.CLEAR, words);
  }

  /** Whether an alarm's subject is a handheld meter. */
  public static boolean isOfMeter(String alarmSubject) {
    return alarmSubject.startsWith("meter-");
  }

  /** A slash is no part of an alarm's subject: {@code tank}, {@code meter-pen}. */
  static String alarmSubject(CheckSubject subject) {
    return subject.toText().replace('/', '-');
  }
}
