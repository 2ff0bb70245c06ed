package feedwitness.publish.access;

import io.nayuki.qrcodegen.QrCode;

/** A text as a picture that a phone's camera reads. */
public final class QrPicture {
  /** Light modules that must surround the picture (ISO/IEC 18004). */
  public static final int MARGIN = 4;

  private final QrCode code;

  /** Draws a text of at most a few hundred characters. */
  public QrPicture(String text) {
    this.code = QrCode.encodeText(text, QrCode.Ecc.MEDIUM);
  }

  /** Modules along each side, margin and all. */
  public int size() {
    return code.size + 2 * MARGIN;
  }

  /** All dark modules as one path of a drawing with {@link #size} units a side. */
  public String path() {
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < code.size; y++) {
      int x = 0;
      while (x < code.size) {
        int start = x;
        while (code.getModule(x, y)) {
          x++;
        }
        if (x > start) {
          path.append(
              "M%d %dh%dv1h-%dz".formatted(start + MARGIN, y + MARGIN, x - start, x - start));
        }
        x++;
      }
    }
    return path.toString();
  }

  /** For a terminal: two rows of modules a line. Light is drawn, so that it reads on dark. */
  public String text() {
    StringBuilder text = new StringBuilder();
    for (int y = -MARGIN; y < code.size + MARGIN; y += 2) {
      for (int x = -MARGIN; x < code.size + MARGIN; x++) {
        boolean upper = !code.getModule(x, y);
        boolean lower = y + 1 < code.size + MARGIN && !code.getModule(x, y + 1);
        text.append(upper ? (lower ? '█' : '▀') : (lower ? '▄' : ' '));
      }
      text.append('\n');
    }
    return text.toString();
  }
}
