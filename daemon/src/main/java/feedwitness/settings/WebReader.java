package feedwitness.settings;

import feedwitness.quantity.ListenAddress;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Reads {@code [web]}: whether and how others reach the page. */
final class WebReader {
  static final Set<String> WEB =
      Set.of("access-key-file", "names", "certificate-file", "private-key-file", "behind-proxy");

  static final int MOST_NAMES = 16;
  private static final Pattern NAME =
      Pattern.compile(
          "(?=.{1,253}$)[A-Za-z0-9]([A-Za-z0-9-]{0,61}[A-Za-z0-9])?"
              + "(\\.[A-Za-z0-9]([A-Za-z0-9-]{0,61}[A-Za-z0-9])?)*|\\[[0-9A-Fa-f:.]{2,45}\\]");

  private WebReader() {}

  static WebSettings read(Section root, ListenAddress listen) {
    Optional<Section> web = root.table("web", WEB);
    WebSettings settings = web.map(WebReader::settings).orElse(WebSettings.NONE);
    boolean needsKey = !listen.isLoopback() || settings.behindProxy();
    if (needsKey && web.isEmpty()) {
      root.problem("server", noKey(listen), keyRemedy());
    } else if (needsKey && !web.orElseThrow().has("access-key-file")) {
      web.orElseThrow().problem("access-key-file", noKey(listen), keyRemedy());
    }
    return settings;
  }

  private static String noKey(ListenAddress listen) {
    return "the page at %s can be reached from other machines, but there is no access key"
        .formatted(listen.text());
  }

  private static String keyRemedy() {
    return "make one with 'feedwitness access-key FILE' and write access-key-file = \"FILE\" under [web], or listen = \"%s\" under [server]"
        .formatted(ListenAddress.DEFAULT.text());
  }

  private static WebSettings settings(Section web) {
    Path file = web.source().file();
    Optional<Path> chain = path(web, "certificate-file", file);
    Optional<Path> key = path(web, "private-key-file", file);
    together(web, "certificate-file", "private-key-file");
    together(web, "private-key-file", "certificate-file");
    List<String> names =
        web.list("names", MOST_NAMES, WebReader::name, "for example names = [\"feed.example\"]");
    boolean behindProxy = web.flag("behind-proxy").orElse(false);
    if (behindProxy && names.isEmpty()) {
      web.problem(
          "behind-proxy",
          "behind-proxy needs the name by which browsers call the proxy",
          "for example names = [\"feed.example\"]");
    }
    return new WebSettings(
        path(web, "access-key-file", file),
        names,
        chain.isPresent() && key.isPresent()
            ? Optional.of(new WebSettings.CertificatePaths(chain.get(), key.get()))
            : Optional.empty(),
        behindProxy);
  }

  private static void together(Section web, String there, String other) {
    if (web.has(there) && !web.has(other)) {
      web.problem(there, "%s stands without %s".formatted(there, other), "name both files");
    }
  }

  private static String name(String text) {
    if (!NAME.matcher(text).matches()) {
      throw new IllegalArgumentException(
          "'%s' is no name of a machine; write it without http:// and without port, such as feed.example"
              .formatted(text));
    }
    return text.toLowerCase(Locale.ROOT);
  }

  private static Optional<Path> path(Section web, String key, Path beside) {
    return web.parsed(
        key,
        text -> {
          if (text.startsWith("~")) {
            throw new IllegalArgumentException(
                "'%s' begins with ~, which only a shell understands".formatted(text));
          }
          try {
            return beside.toAbsolutePath().resolveSibling(text).normalize();
          } catch (InvalidPathException e) {
            throw new IllegalArgumentException("'%s' cannot be a path".formatted(text), e);
          }
        },
        "write the whole path, for example %s = \"/etc/feedwitness/%s\"".formatted(key, key));
  }
}
