package feedwitness.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;

import feedwitness.alarm.LifeCycle.Input;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Every state with every input, for alarms and notices, counting and set aside. */
class LifeCycleTest {
  /** State, input, whether it asks for an answer, whether it counts: next state, what is told. */
  private static final String TABLE =
      """
      NORMAL         PRESENT     alarm  counts UNACKNOWLEDGED RAISED
      UNACKNOWLEDGED PRESENT     alarm  counts UNACKNOWLEDGED -
      ACKNOWLEDGED   PRESENT     alarm  counts ACKNOWLEDGED   -
      RETURNED       PRESENT     alarm  counts UNACKNOWLEDGED RAISED
      NORMAL         ABSENT      alarm  counts NORMAL         -
      UNACKNOWLEDGED ABSENT      alarm  counts RETURNED       CLEARED
      ACKNOWLEDGED   ABSENT      alarm  counts NORMAL         CLEARED
      RETURNED       ABSENT      alarm  counts RETURNED       -
      NORMAL         ACKNOWLEDGE alarm  counts NORMAL         -
      UNACKNOWLEDGED ACKNOWLEDGE alarm  counts ACKNOWLEDGED   ACKNOWLEDGED
      ACKNOWLEDGED   ACKNOWLEDGE alarm  counts ACKNOWLEDGED   -
      RETURNED       ACKNOWLEDGE alarm  counts NORMAL         ACKNOWLEDGED
      NORMAL         COUNT_AGAIN alarm  counts NORMAL         -
      UNACKNOWLEDGED COUNT_AGAIN alarm  counts UNACKNOWLEDGED RAISED
      ACKNOWLEDGED   COUNT_AGAIN alarm  counts UNACKNOWLEDGED RAISED
      RETURNED       COUNT_AGAIN alarm  counts RETURNED       -
      NORMAL         PRESENT     alarm  aside  ACKNOWLEDGED   -
      UNACKNOWLEDGED PRESENT     alarm  aside  UNACKNOWLEDGED -
      ACKNOWLEDGED   PRESENT     alarm  aside  ACKNOWLEDGED   -
      RETURNED       PRESENT     alarm  aside  UNACKNOWLEDGED -
      NORMAL         ABSENT      alarm  aside  NORMAL         -
      UNACKNOWLEDGED ABSENT      alarm  aside  RETURNED       -
      ACKNOWLEDGED   ABSENT      alarm  aside  NORMAL         -
      RETURNED       ABSENT      alarm  aside  RETURNED       -
      NORMAL         ACKNOWLEDGE alarm  aside  NORMAL         -
      UNACKNOWLEDGED ACKNOWLEDGE alarm  aside  ACKNOWLEDGED   ACKNOWLEDGED
      ACKNOWLEDGED   ACKNOWLEDGE alarm  aside  ACKNOWLEDGED   -
      RETURNED       ACKNOWLEDGE alarm  aside  NORMAL         ACKNOWLEDGED
      NORMAL         COUNT_AGAIN alarm  aside  NORMAL         -
      UNACKNOWLEDGED COUNT_AGAIN alarm  aside  UNACKNOWLEDGED RAISED
      ACKNOWLEDGED   COUNT_AGAIN alarm  aside  UNACKNOWLEDGED RAISED
      RETURNED       COUNT_AGAIN alarm  aside  RETURNED       -
      NORMAL         PRESENT     notice counts ACKNOWLEDGED   RAISED
      UNACKNOWLEDGED PRESENT     notice counts UNACKNOWLEDGED -
      ACKNOWLEDGED   PRESENT     notice counts ACKNOWLEDGED   -
      RETURNED       PRESENT     notice counts ACKNOWLEDGED   RAISED
      NORMAL         ABSENT      notice counts NORMAL         -
      UNACKNOWLEDGED ABSENT      notice counts RETURNED       CLEARED
      ACKNOWLEDGED   ABSENT      notice counts NORMAL         CLEARED
      RETURNED       ABSENT      notice counts RETURNED       -
      NORMAL         ACKNOWLEDGE notice counts NORMAL         -
      UNACKNOWLEDGED ACKNOWLEDGE notice counts ACKNOWLEDGED   ACKNOWLEDGED
      ACKNOWLEDGED   ACKNOWLEDGE notice counts ACKNOWLEDGED   -
      RETURNED       ACKNOWLEDGE notice counts NORMAL         ACKNOWLEDGED
      NORMAL         COUNT_AGAIN notice counts NORMAL         -
      UNACKNOWLEDGED COUNT_AGAIN notice counts ACKNOWLEDGED   RAISED
      ACKNOWLEDGED   COUNT_AGAIN notice counts ACKNOWLEDGED   RAISED
      RETURNED       COUNT_AGAIN notice counts RETURNED       -
      NORMAL         PRESENT     notice aside  ACKNOWLEDGED   -
      UNACKNOWLEDGED PRESENT     notice aside  UNACKNOWLEDGED -
      ACKNOWLEDGED   PRESENT     notice aside  ACKNOWLEDGED   -
      RETURNED       PRESENT     notice aside  ACKNOWLEDGED   -
      NORMAL         ABSENT      notice aside  NORMAL         -
      UNACKNOWLEDGED ABSENT      notice aside  RETURNED       -
      ACKNOWLEDGED   ABSENT      notice aside  NORMAL         -
      RETURNED       ABSENT      notice aside  RETURNED       -
      NORMAL         ACKNOWLEDGE notice aside  NORMAL         -
      UNACKNOWLEDGED ACKNOWLEDGE notice aside  ACKNOWLEDGED   ACKNOWLEDGED
      ACKNOWLEDGED   ACKNOWLEDGE notice aside  ACKNOWLEDGED   -
      RETURNED       ACKNOWLEDGE notice aside  NORMAL         ACKNOWLEDGED
      NORMAL         COUNT_AGAIN notice aside  NORMAL         -
      UNACKNOWLEDGED COUNT_AGAIN notice aside  ACKNOWLEDGED   RAISED
      ACKNOWLEDGED   COUNT_AGAIN notice aside  ACKNOWLEDGED   RAISED
      RETURNED       COUNT_AGAIN notice aside  RETURNED       -
      """;

  @Test
  void followsTheTableInEveryRow() {
    List<String> rows = TABLE.lines().toList();
    List<String> done = new ArrayList<>();
    for (String row : rows) {
      String[] cell = row.strip().split(" +", -1);
      LifeCycle.Step step =
          LifeCycle.step(
              State.valueOf(cell[0]),
              Input.valueOf(cell[1]),
              cell[2].equals("alarm"),
              cell[3].equals("counts"));
      assertEquals(State.valueOf(cell[4]), step.next(), row);
      assertEquals(
          cell[5].equals("-") ? Optional.empty() : Optional.of(Transition.valueOf(cell[5])),
          step.told(),
          row);
      done.add(cell[0] + cell[1] + cell[2] + cell[3]);
    }
    int all = State.values().length * Input.values().length * 2 * 2;
    assertEquals(all, done.stream().distinct().count(), "the table must have every row once");
    assertEquals(all, rows.size());
  }
}
