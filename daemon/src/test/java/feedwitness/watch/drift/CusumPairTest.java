package feedwitness.watch.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The pair of sums against the theory of Page, Siegmund and Moustakides. */
class CusumPairTest {
  private static final double NONE = Double.POSITIVE_INFINITY;

  @Test
  void limitsAreThoseOfTheLiterature() {
    assertEquals(18.8, RunLength.limitFor(0.25, NONE, 4.0 * 43_200), 0.2);
    assertEquals(5.23, RunLength.limitFor(1, NONE, 4.0 * 43_200), 0.05);
  }

  @Test
  void theChainAgreesWithSiegmund() {
    double b = 8 + 1.166;
    double siegmund = (Math.exp(0.5 * 2 * b) - 0.5 * 2 * b - 1) / (2 * 0.25);
    assertEquals(siegmund, RunLength.of(0.5, NONE, 8), 0.03 * siegmund);
  }

  @Test
  void itCriesWolfAsOftenAsAgreed() {
    for (double clip : new double[] {CusumPair.CLIP, NONE}) {
      double run = DriftFigures.falseRunLength(clip, 400, 1);
      assertEquals(43_200, run, 0.15 * 43_200, () -> "clipped at " + clip);
    }
  }

  @Test
  void itIsNearlyAsQuickAsPossible() {
    for (int i = 0; i < DriftFigures.SHIFTS.length; i++) {
      double shift = DriftFigures.SHIFTS[i];
      double plain = DriftFigures.delay(NONE, shift, 3000, 2) / DriftFigures.OPTIMUM[i];
      double clipped = DriftFigures.delay(CusumPair.CLIP, shift, 3000, 2) / DriftFigures.OPTIMUM[i];
      assertTrue(plain <= 1.3, () -> shift + " σ: " + plain);
      assertTrue(clipped <= (shift > 2 ? 1.7 : 1.3), () -> shift + " σ clipped: " + clipped);
    }
  }

  @Test
  void noSingleOutlierSignals() {
    CusumPair pair = new CusumPair(CusumPair.CLIP, 720, CusumPair.EVEN);
    assertEquals(0, pair.add(1000, 0));
    assertEquals(0, pair.add(-1000, 1));
  }

  @Test
  void knowsWhenItBegan() {
    CusumPair pair = new CusumPair(CusumPair.CLIP, 720, CusumPair.EVEN);
    for (int i = 0; i < 50; i++) {
      pair.add(i % 2 == 0 ? 0.2 : -0.2, i);
    }
    int i = 50;
    while (pair.add(-3, i) == 0) {
      i++;
    }
    assertTrue(i <= 53);
    assertEquals(50, pair.since(-1));
  }
}
