package feedwitness.settings;

import feedwitness.feed.Fault;
import feedwitness.feed.FeedStock;
import feedwitness.feed.MixOutcome;
import feedwitness.feed.Mixer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** A recipe in TOML: the form of a mix, its faults told with line and column. */
public final class RecipeFile {
  private static final Pattern STEP = Pattern.compile("([^.\\[\\]]+)(?:\\[([0-9]+)])?");

  private final Path file;
  private final TomlTable root;

  private RecipeFile(Path file, TomlTable root) {
    this.file = file;
    this.root = root;
  }

  /** What became of a recipe. */
  public sealed interface Outcome {
    /** It was worked out. */
    record Mixed(MixOutcome.Mixed mix) implements Outcome {}

    /** It cannot be: all that is wrong, in order of place. */
    record Faulty(List<Problem> problems) implements Outcome {
      public Faulty {
        problems = List.copyOf(problems);
      }
    }
  }

  /** Reads a recipe and works it out. */
  public static Outcome mix(Path file, Mixer mixer) {
    Problems problems = new Problems();
    Optional<Section> section = TomlFile.read(file, Set.copyOf(Mixer.SECTIONS), problems);
    if (section.isEmpty() || !problems.none()) {
      return new Outcome.Faulty(problems.list());
    }
    TomlTable root = section.get().parsed();
    MixOutcome outcome = mixer.mix(map(root));
    if (outcome instanceof MixOutcome.Faulty faulty) {
      RecipeFile recipe = new RecipeFile(file, root);
      faulty.faults().forEach(fault -> problems.add(recipe.problem(fault)));
      return new Outcome.Faulty(problems.list());
    }
    return new Outcome.Mixed((MixOutcome.Mixed) outcome);
  }

  /** Reads a recipe for what it feeds; its faults are noted. */
  static Optional<FeedStock> feed(Path file, Mixer mixer, Problems problems) {
    Outcome outcome = mix(file, mixer);
    if (outcome instanceof Outcome.Faulty faulty) {
      faulty.problems().forEach(problems::add);
      return Optional.empty();
    }
    Optional<FeedStock> feed =
        TomlFile.read(file, Set.copyOf(Mixer.SECTIONS), problems)
            .flatMap(section -> mixer.feed(map(section.parsed())));
    if (feed.isEmpty()) {
      problems.add(
          file,
          Spot.START,
          "",
          "this recipe mixes no feed that can be solved with the conductivity model",
          "give it water, goal, use and make; feedwitness mix prints what it makes");
    }
    return feed;
  }

  private static Map<String, Object> map(TomlTable table) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (String key : table.keySet()) {
      map.put(key, plain(table.get(List.of(key))));
    }
    return map;
  }

  private static Object plain(@Nullable Object value) {
    if (value instanceof TomlTable table) {
      return map(table);
    }
    if (value instanceof TomlArray array) {
      List<Object> list = new ArrayList<>();
      for (int i = 0; i < array.size(); i++) {
        list.add(plain(array.get(i)));
      }
      return list;
    }
    return value instanceof Number || value instanceof Boolean ? value : String.valueOf(value);
  }

  private Problem problem(Fault fault) {
    Spot spot = spot(fault.field());
    String what = fault.value().isEmpty() ? "" : " '" + fault.value() + "'";
    return new Problem(
        file,
        spot.line(),
        spot.column(),
        fault.field(),
        fault.field() + what + ": " + fault.reason(),
        fault.remedy());
  }

  /** Of the innermost part of a path that stands in the file. */
  private Spot spot(String path) {
    Spot spot = Spot.START;
    TomlTable table = root;
    Matcher step = STEP.matcher(path);
    while (step.find()) {
      List<String> key = List.of(step.group(1));
      if (!table.contains(key)) {
        return spot;
      }
      spot = Spot.of(table.inputPositionOf(key));
      Object value = table.get(key);
      if (value instanceof TomlArray array && step.group(2) != null) {
        int place = Integer.parseInt(step.group(2)) - 1;
        if (place < 0 || place >= array.size()) {
          return spot;
        }
        spot = Spot.of(array.inputPositionOf(place));
        value = array.get(place);
      }
      if (!(value instanceof TomlTable inner)) {
        return spot;
      }
      table = inner;
    }
    return spot;
  }
}
