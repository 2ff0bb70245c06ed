package feedwitness.publish;

import io.javalin.http.Context;
import io.javalin.http.staticfiles.ResourceHandler;
import io.javalin.http.staticfiles.StaticFileConfig;
import io.javalin.security.RouteRole;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The page's files, out of the program itself. Only plain names are looked up: what could climb out
 * of the folder, hide, or name a kind of file the page has not, is not there.
 */
final class PageFiles implements ResourceHandler {
  private static final String FOLDER = "feedwitness/web";
  private static final String CHART = "META-INF/resources/webjars/uplot/1.6.30/dist/";
  private static final Map<String, String> ELSEWHERE =
      Map.of(
          "/", FOLDER + "/index.html",
          "/vendor/uPlot.esm.js", CHART + "uPlot.esm.js",
          "/vendor/uPlot.min.css", CHART + "uPlot.min.css");

  private static final Pattern PLAIN =
      Pattern.compile("(/[A-Za-z0-9_-][A-Za-z0-9_.-]{0,63}){1,6}\\.[a-z0-9]{2,11}");

  private static final Map<String, String> KINDS =
      Map.of(
          "html", "text/html; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "css", "text/css; charset=utf-8",
          "svg", "image/svg+xml",
          "png", "image/png",
          "ico", "image/vnd.microsoft.icon",
          "woff2", "font/woff2",
          "webmanifest", "application/manifest+json",
          "txt", "text/plain; charset=utf-8");

  /** Only files that exist are kept, so it cannot grow beyond the program's own. */
  private final Map<String, PageFile> known = new ConcurrentHashMap<>();

  @Override
  public boolean canHandle(Context context) {
    return find(context.path()).isPresent();
  }

  @Override
  public boolean handle(Context context) {
    Optional<PageFile> found = find(context.path());
    found.ifPresent(file -> answer(context, file));
    return found.isPresent();
  }

  private static void answer(Context context, PageFile file) {
    context.header("Cache-Control", "no-cache").header("ETag", file.tag());
    if (matches(context.header("If-None-Match"), file.tag())) {
      context.status(304);
      return;
    }
    Answers.write(context, file.mediaType(), file.content().toArray());
  }

  private static boolean matches(@Nullable String wanted, String tag) {
    return wanted != null
        && Arrays.stream(wanted.split(",", -1))
            .map(String::strip)
            .map(each -> each.startsWith("W/") ? each.substring(2) : each)
            .anyMatch(each -> each.equals(tag) || each.equals("*"));
  }

  private Optional<PageFile> find(String path) {
    PageFile file = known.get(path);
    if (file != null) {
      return Optional.of(file);
    }
    String inside =
        ELSEWHERE.getOrDefault(path, PLAIN.matcher(path).matches() ? FOLDER + path : "");
    String mediaType = KINDS.get(inside.substring(inside.lastIndexOf('.') + 1));
    if (mediaType == null) {
      return Optional.empty();
    }
    try {
      Optional<PageFile> read =
          ClasspathFiles.read(inside).map(content -> PageFile.of(mediaType, content));
      read.ifPresent(fresh -> known.put(path, fresh));
      return read;
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + inside + " out of the program", e);
    }
  }

  @Override
  public boolean addStaticFileConfig(StaticFileConfig config) {
    return false;
  }

  @Override
  public Set<RouteRole> resourceRouteRoles(Context context) {
    return Set.of();
  }
}
