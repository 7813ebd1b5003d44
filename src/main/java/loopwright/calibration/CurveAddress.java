package loopwright.calibration;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import loopwright.web.PathSegment;
import org.jspecify.annotations.Nullable;

/** Addresses of pages on which curves are typed. */
final class CurveAddress {
  private CurveAddress() {}

  /**
   * @param tag of the point; null on the bench
   * @param set fingerprint of the parts measured; null for those fitted at the point
   */
  static String of(@Nullable String tag, @Nullable String set) {
    String page = tag == null ? "/bench/curve" : "/loops/" + PathSegment.of(tag) + "/curve";
    return set == null ? page : page + "?set=" + URLEncoder.encode(set, StandardCharsets.UTF_8);
  }
}
