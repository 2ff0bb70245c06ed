package feedwitness.settings;

import feedwitness.profile.DeviceProfile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * All device profiles there are: ours, which come with the program, and the user's own, one file
 * each in a folder. A user's profile with the name of one of ours goes before it.
 */
public final class ProfileShelf {
  private static final String BUILT_IN = "feedwitness/profiles/";
  private static final String INDEX = "profiles.index";

  private final SortedMap<String, DeviceProfile> profiles;
  private final List<String> notes;
  private final List<Problem> problems;

  private ProfileShelf(
      SortedMap<String, DeviceProfile> profiles, List<String> notes, List<Problem> problems) {
    this.profiles = profiles;
    this.notes = List.copyOf(notes);
    this.problems = List.copyOf(problems);
  }

  /**
   * Reads them all.
   *
   * @param folder of the user's own; need not exist
   * @throws IllegalStateException if the program itself is incomplete
   */
  public static ProfileShelf read(Path folder) {
    Problems problems = new Problems();
    SortedMap<String, DeviceProfile> profiles = new TreeMap<>();
    builtIn().forEach(profile -> profiles.put(profile.name(), profile));
    List<String> notes = new ArrayList<>();
    for (Path file : files(folder, problems)) {
      Optional<DeviceProfile> own = ProfileReader.read(file, problems);
      if (profiles.containsKey(ProfileReader.nameOf(file))) {
        notes.add(
            "%s is used instead of the built-in profile '%s'"
                .formatted(file, ProfileReader.nameOf(file)));
      }
      own.ifPresent(profile -> profiles.put(profile.name(), profile));
    }
    return new ProfileShelf(profiles, notes, problems.list());
  }

  /** What became of reading one profile file. */
  public sealed interface FileOutcome {
    record Good(DeviceProfile profile) implements FileOutcome {}

    record Faulty(List<Problem> problems) implements FileOutcome {
      public Faulty {
        problems = List.copyOf(problems);
      }
    }
  }

  /** Reads a profile that stands on no shelf, to try it. */
  public static FileOutcome readFile(Path file) {
    Problems problems = new Problems();
    Optional<DeviceProfile> profile = ProfileReader.read(file, problems);
    return profile.isPresent() && problems.none()
        ? new FileOutcome.Good(profile.get())
        : new FileOutcome.Faulty(problems.list());
  }

  /** The profile of that name. */
  public Optional<DeviceProfile> find(String name) {
    return Optional.ofNullable(profiles.get(name));
  }

  /** By name. */
  public List<DeviceProfile> all() {
    return List.copyOf(profiles.values());
  }

  /** Names, in order. */
  public List<String> names() {
    return List.copyOf(profiles.keySet());
  }

  /** Which of ours are replaced by the user's. */
  public List<String> notes() {
    return notes;
  }

  /** What is wrong with the user's own profiles; those files are not on the shelf. */
  public List<Problem> problems() {
    return problems;
  }

  private static List<Path> files(Path folder, Problems problems) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.filter(file -> file.toString().endsWith(".toml")).sorted().toList();
    } catch (IOException | UncheckedIOException e) {
      problems.add(
          folder,
          Spot.START,
          "",
          "the folder of device profiles cannot be read",
          "let the user the service runs as open it");
      return List.of();
    }
  }

  private static List<DeviceProfile> builtIn() {
    Problems problems = new Problems();
    List<DeviceProfile> profiles = new ArrayList<>();
    for (String file : resource(INDEX).lines().map(String::strip).toList()) {
      if (!file.isEmpty()) {
        ProfileReader.parse(Path.of(file), resource(file), problems).ifPresent(profiles::add);
      }
    }
    if (!problems.none()) {
      throw new IllegalStateException("built-in device profiles are faulty: " + problems.list());
    }
    return profiles;
  }

  private static String resource(String name) {
    try (InputStream in =
        ProfileShelf.class.getClassLoader().getResourceAsStream(BUILT_IN + name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its part " + BUILT_IN + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException("cannot read the program's part " + BUILT_IN + name, e);
    }
  }
}
