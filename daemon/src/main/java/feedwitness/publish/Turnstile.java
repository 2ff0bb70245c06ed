package feedwitness.publish;

import feedwitness.publish.access.Access;
import feedwitness.publish.access.Access.Verdict;
import feedwitness.publish.access.Arrival;
import feedwitness.publish.access.Caller;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Set;
import java.util.concurrent.Semaphore;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Lets nobody past who is not known: pages, files, figures and streams alike. Strangers get the
 * small page where a code is typed, what that page is made of, and nothing else; and who may only
 * look changes nothing.
 */
final class Turnstile extends Handler.Wrapper {
  static final String PAIR = Routes.API + "/access/pair";

  /** Who may only look may still take its own leave. */
  static final String LEAVE = Routes.API + "/access/leave";

  /** Changes nothing, but its question is too long for an address. */
  static final String MIX = Routes.API + "/mix";

  private static final Set<String> FOR_ALL_KNOWN = Set.of(LEAVE, MIX);

  private static final String PAGE = "/pair.html";
  private static final Set<String> OPEN_FILES =
      Set.of(
          PAGE,
          "/assets/icon.svg",
          "/assets/css/tokens.css",
          "/assets/css/base.css",
          "/assets/css/form.css",
          "/assets/css/pair.css",
          "/assets/js/pair.js");

  private static final Set<String> LOOKING = Set.of("GET", "HEAD");

  /** Each may hold a thread for as long as it dribbles; the others stay for those who are known. */
  private static final int MOST_STRANGERS = 3;

  private final Access access;
  private final String cookie;
  private final Semaphore strangers = new Semaphore(MOST_STRANGERS);

  Turnstile(Access access) {
    this.access = access;
    this.cookie = TokenCookie.name(access.settings());
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    Arrival arrival = Callers.arrival(request);
    Callers.rememberGuesser(request, access);
    String authorization = request.getHeaders().get(HttpHeader.AUTHORIZATION);
    Verdict verdict =
        access.judge(
            arrival, authorization == null ? "" : authorization, Callers.token(request, cookie));
    if (verdict instanceof Verdict.Known known) {
      Callers.remember(request, known.caller());
      return mayDo(known.caller(), request)
          ? super.handle(request, response, callback)
          : refuse(response, callback, onlyLooks(known.caller()));
    }
    if (verdict instanceof Verdict.Waits waits) {
      return refuseForNow(response, callback, waits.left());
    }
    return isOpen(request)
        ? letAStrangerTry(request, response, callback)
        : turnAway(request, response, callback);
  }

  private boolean letAStrangerTry(Request request, Response response, Callback callback)
      throws Exception {
    if (!strangers.tryAcquire()) {
      return refuse(
          response,
          callback,
          Problem.of(503, "several devices are being paired just now; try again in a minute"));
    }
    Request.addCompletionListener(request, failure -> strangers.release());
    return super.handle(request, response, callback);
  }

  private static boolean mayDo(Caller caller, Request request) {
    return caller.mayAct()
        || LOOKING.contains(request.getMethod())
        || FOR_ALL_KNOWN.contains(path(request));
  }

  private static Problem onlyLooks(Caller caller) {
    return Problem.of(
        403,
        "%s may look and change nothing; pair it anew at the desk with the right to act"
            .formatted(Quoted.of(caller.name())));
  }

  /** Compared as it was sent: whatever is written otherwise is not open. */
  private boolean isOpen(Request request) {
    String path = path(request);
    return LOOKING.contains(request.getMethod())
        ? OPEN_FILES.contains(path)
        : access.settings().open() && request.getMethod().equals("POST") && path.equals(PAIR);
  }

  private static String path(Request request) {
    return String.valueOf(request.getHttpURI().getPath());
  }

  private boolean turnAway(Request request, Response response, Callback callback)
      throws IOException {
    response.getHeaders().put(HttpHeader.WWW_AUTHENTICATE, "Bearer realm=\"Feedwitness\"");
    if (path(request).equals("/") && LOOKING.contains(request.getMethod())) {
      response.setStatus(401);
      byte[] page = ClasspathFiles.read("feedwitness/web" + PAGE).orElseThrow();
      response.getHeaders().put(HttpHeader.CONTENT_TYPE, "text/html; charset=utf-8");
      response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-store");
      response.getHeaders().put(HttpHeader.CONTENT_LENGTH, page.length);
      boolean body = request.getMethod().equals("GET");
      response.write(true, ByteBuffer.wrap(body ? page : new byte[0]), callback);
      return true;
    }
    return refuse(
        response,
        callback,
        Problem.of(
            401,
            "this browser is not paired; open %s and type a code from the desk"
                .formatted("/ of this service")));
  }

  private static boolean refuse(Response response, Callback callback, Problem problem) {
    ProblemAnswers.write(response, callback, problem);
    return true;
  }

  private static boolean refuseForNow(Response response, Callback callback, Duration left) {
    response.getHeaders().put(HttpHeader.RETRY_AFTER, left.toSeconds() + 1);
    return refuse(response, callback, tooMany(left));
  }

  static Problem tooMany(Duration left) {
    return Problem.of(
        429,
        "too many wrong tries; the next is looked at in %d min".formatted(left.toMinutes() + 1));
  }
}
