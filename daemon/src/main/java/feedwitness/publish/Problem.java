package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.List;
import org.eclipse.jetty.http.HttpStatus;

/**
 * Why a request was not served, as problem details (RFC 9457).
 *
 * @param status HTTP status, 400 to 599
 * @param detail item, value, limit and remedy, for people
 * @param errors the fields or parameters at fault; left out of the JSON when empty
 */
@JsonPropertyOrder({"type", "title", "status", "detail", "errors"})
record Problem(
    int status,
    String detail,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<FieldError> errors) {
  static final String MEDIA_TYPE = "application/problem+json";

  Problem {
    errors = List.copyOf(errors);
  }

  static Problem of(int status, String detail) {
    return new Problem(status, detail, List.of());
  }

  /** One field is at fault. */
  static Problem field(int status, String field, String message) {
    return new Problem(status, message, List.of(new FieldError(field, message)));
  }

  /** RFC 9457, 4.2.1: no more is meant than the status says. */
  public String getType() {
    return "about:blank";
  }

  public String getTitle() {
    return HttpStatus.getMessage(status);
  }

  ProblemException exception() {
    return new ProblemException(this);
  }

  /** One field or parameter at fault. */
  record FieldError(String field, String message) {}
}
