package loopwright.web;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.ByteBuffer;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;

/** What is answered when a request is too broken to reach a route: one sentence, no inside. */
final class BareErrors extends ErrorHandler {
  @Override
  protected void generateResponse(
      Request request,
      Response response,
      int status,
      @Nullable String message,
      @Nullable Throwable cause,
      Callback callback) {
    describe(response.getHeaders());
    response.write(true, sentence(status), callback);
  }

  @Override
  public ByteBuffer badMessageError(
      int status, @Nullable String reason, HttpFields.Mutable headers) {
    describe(headers);
    return sentence(status);
  }

  private static void describe(HttpFields.Mutable headers) {
    headers.put(HttpHeader.CONTENT_TYPE, "text/plain; charset=utf-8");
    headers.put("X-Content-Type-Options", "nosniff");
    headers.put("Content-Security-Policy", Headers.CONTENT_POLICY);
  }

  private static ByteBuffer sentence(int status) {
    return UTF_8.encode("This request could not be served (" + status + ").\n");
  }
}
