package loopwright.web;

/** The pages of one feature. */
@FunctionalInterface
public interface Pages {
  void mount(Routes routes);
}
