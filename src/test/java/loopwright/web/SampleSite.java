package loopwright.web;

import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import loopwright.testing.KnownPeople;
import loopwright.testing.Visitor;

/**
 * The web tool running on a free port with {@link SamplePages}, invented people and a set clock.
 */
final class SampleSite implements AutoCloseable {
  final SamplePages pages = new SamplePages();
  final KnownPeople people = new KnownPeople();
  volatile Instant now = Instant.parse("2026-11-24T08:00:00Z");
  final Web web;

  SampleSite() {
    this(WebSettings.loopback(0));
  }

  SampleSite(WebSettings settings) {
    InstantSource clock = () -> now;
    web = Web.start(settings, SamplePages.PAGE, people, clock, List.of(pages));
  }

  Visitor stranger() {
    return new Visitor(web.address());
  }

  Visitor as(String role) {
    return Visitor.signedIn(web.address(), role);
  }

  @Override
  public void close() {
    web.close();
  }
}
