package feedwitness.publish.access;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.nayuki.qrcodegen.QrCode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The picture for the camera, drawn for the page and for a terminal. */
class QrPictureTest {
  private static final String LINK = "https://feed.quarry-end.example:8460/#pair/48210937";
  private static final Pattern RUN = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h-(\\d+)z");

  private final QrPicture picture = new QrPicture(LINK);
  private final QrCode code = QrCode.encodeText(LINK, QrCode.Ecc.MEDIUM);

  private boolean dark(int x, int y) {
    return code.getModule(x - QrPicture.MARGIN, y - QrPicture.MARGIN);
  }

  @Test
  void drawsEveryDarkModuleAndNoOther() {
    boolean[][] drawn = new boolean[picture.size()][picture.size()];
    Matcher run = RUN.matcher(picture.path());
    while (run.find()) {
      for (int i = 0; i < Integer.parseInt(run.group(3)); i++) {
        drawn[Integer.parseInt(run.group(2))][Integer.parseInt(run.group(1)) + i] = true;
      }
    }
    for (int y = 0; y < picture.size(); y++) {
      for (int x = 0; x < picture.size(); x++) {
        assertEquals(dark(x, y), drawn[y][x], x + ", " + y);
      }
    }
  }

  @Test
  void printsTwoRowsOfModulesALine() {
    String[] lines = picture.text().split("\n", -1);
    for (int y = 0; y < picture.size(); y++) {
      for (int x = 0; x < picture.size(); x++) {
        char shown = lines[y / 2].charAt(x);
        boolean light = shown == '█' || shown == (y % 2 == 0 ? '▀' : '▄');
        assertEquals(dark(x, y), !light, x + ", " + y);
      }
    }
  }
}
