package feedwitness.publish;

import feedwitness.publish.access.Access;
import feedwitness.publish.access.Arrival;
import feedwitness.publish.access.Caller;
import io.javalin.http.Context;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.eclipse.jetty.http.HttpCookie;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;

/** Finds out how a request came, and remembers with it who it was found to come from. */
final class Callers {
  static final Set<String> LOOPBACK_NAMES = Set.of("localhost", "127.0.0.1", "[::1]");

  private static final String CALLER = "feedwitness.caller";
  private static final String GUESSER = "feedwitness.guesser";

  /** Any of them says that a proxy stands in between. */
  private static final List<String> FORWARDED =
      List.of(
          "Forwarded",
          "X-Forwarded-For",
          "X-Forwarded-Host",
          "X-Forwarded-Proto",
          "X-Real-IP",
          "Via");

  /** No name: a name would be looked up. */
  private static final Pattern NUMERIC = Pattern.compile("[0-9.]{7,15}|[0-9A-Fa-f:.]{2,45}");

  private Callers() {}

  static Arrival arrival(Request request) {
    InetAddress peer = address(request.getConnectionMetaData().getRemoteSocketAddress());
    return new Arrival(
        peer,
        address(request.getConnectionMetaData().getLocalSocketAddress()),
        FORWARDED.stream().anyMatch(request.getHeaders()::contains),
        nearest(request),
        isLoopback(Hosts.withoutPort(String.valueOf(request.getHeaders().get(HttpHeader.HOST)))));
  }

  private static boolean isLoopback(String name) {
    return LOOPBACK_NAMES.contains(name) || name.matches("127(\\.[0-9]{1,3}){3}");
  }

  private static InetAddress address(SocketAddress socket) {
    return ((InetSocketAddress) socket).getAddress();
  }

  /** The last entry is the one the nearest proxy has added; those before anybody can write. */
  private static Optional<InetAddress> nearest(Request request) {
    List<String> all = request.getHeaders().getValuesList("X-Forwarded-For");
    String last = all.isEmpty() ? "" : all.get(all.size() - 1);
    String address = last.substring(last.lastIndexOf(',') + 1).strip();
    if (!NUMERIC.matcher(address).matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(InetAddress.getByName(address));
    } catch (UnknownHostException e) {
      return Optional.empty();
    }
  }

  static String token(Request request, String cookie) {
    return Request.getCookies(request).stream()
        .filter(each -> each.getName().equals(cookie))
        .map(HttpCookie::getValue)
        .findFirst()
        .orElse("");
  }

  static void remember(Request request, Caller caller) {
    request.setAttribute(CALLER, caller);
  }

  static void remember(Context context, Caller caller) {
    context.req().setAttribute(CALLER, caller);
  }

  static void rememberGuesser(Request request, Access access) {
    request.setAttribute(GUESSER, access.guesser(arrival(request)));
  }

  /** Who asks; there is always somebody but where a code is typed. */
  static Caller of(Context context) {
    return found(context).orElseThrow();
  }

  static Optional<Caller> found(Context context) {
    return Optional.ofNullable((Caller) context.req().getAttribute(CALLER));
  }

  /** The address that is counted and recorded. */
  static InetAddress address(Context context) {
    return Objects.requireNonNull((InetAddress) context.req().getAttribute(GUESSER));
  }
}
