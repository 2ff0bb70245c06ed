package feedwitness.quality;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Readings out of the public recordings, as a {@link QualityJudge} takes them. */
record Recording(String name, boolean at25, List<Row> rows) {

  /** Conductivity in mS/cm, temperature in °C; NaN if there is none. */
  record Row(double seconds, double milliSiemensPerCm, double celsius) {}

  Recording {
    rows = List.copyOf(rows);
  }

  /** Flags of every row, those added later included. */
  List<Flags> judge() {
    return judge(Integer.MAX_VALUE);
  }

  /** Flags of every row, with those that were added at most so many rows later. */
  List<Flags> judge(int reach) {
    QualityJudge judge = new QualityJudge(new JudgeSettings(Double.NaN, at25, false));
    PlausibilityTests.Rated rated =
        new PlausibilityTests.Rated(Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    Flags[] flags = new Flags[rows.size()];
    for (int i = 0; i < flags.length; i++) {
      Row row = rows.get(i);
      Flags known = PlausibilityTests.judge(row.milliSiemensPerCm(), row.celsius(), rated);
      Judgement said =
          judge.judge(
              new Observation(
                  i, row.seconds(), row.milliSiemensPerCm(), row.celsius(), Double.NaN, known));
      flags[i] = known.with(said.now());
      for (Judgement.Earlier one : said.earlier()) {
        for (int at = (int) one.first(); at <= one.last(); at++) {
          flags[at] = i - at <= reach ? flags[at].withLater(one.flags()) : flags[at];
        }
      }
    }
    return Arrays.asList(flags);
  }

  Recording with(List<Row> changed) {
    return new Recording(name, at25, changed);
  }

  static Recording benchReference(Path file) throws IOException {
    return read(file, "local_time", "cond_uScm", "temp_C", false);
  }

  static Recording plantWater(Path file) throws IOException {
    return read(file, "utc", "cond25_uScm", "temp_C", true);
  }

  static Recording stream(Path file) throws IOException {
    return read(file, "datetime", "cond", "temp", true);
  }

  /** A logger whose clock starts again at 2000-01-01 and which repeats its header. */
  static Recording benchProbe(Path file) throws IOException {
    return read(file, "Real_Time", "Cond_uScm-1", "Temp_C", false);
  }

  private static Recording read(
      Path file, String time, String conductivity, String celsius, boolean at25)
      throws IOException {
    List<String> lines = Files.readAllLines(file);
    String header = lines.get(0);
    List<String> names = Arrays.asList(header.split(",", -1));
    List<Row> rows = new ArrayList<>();
    for (String line : lines) {
      String[] cells = line.split(",", -1);
      if (line.equals(header) || cells.length < names.size()) {
        continue;
      }
      rows.add(
          new Row(
              seconds(cells[names.indexOf(time)]),
              number(cells[names.indexOf(conductivity)]) / 1000,
              number(cells[names.indexOf(celsius)])));
    }
    return new Recording(file.getFileName().toString(), at25, rows);
  }

  private static double seconds(String text) {
    if (text.chars().allMatch(Character::isDigit)) {
      return Double.parseDouble(text);
    }
    String local = text.replace(' ', 'T').replace("Z", "");
    return LocalDateTime.parse(local).toEpochSecond(ZoneOffset.UTC);
  }

  /** −9999 and the like stand for none. */
  static double number(String text) {
    if (text.isEmpty() || text.equals("NULL") || text.equals("NA")) {
      return Double.NaN;
    }
    double number = Double.parseDouble(text);
    return number <= -900 ? Double.NaN : number;
  }
}
