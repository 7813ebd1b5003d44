package loopwright.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.thymeleaf.TemplateEngine;
import org.thymeleaf.context.LazyContextVariable;
import org.thymeleaf.context.WebContext;
import org.thymeleaf.templatemode.TemplateMode;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;
import org.thymeleaf.web.servlet.JakartaServletWebApplication;

/**
 * Shows pages from {@code templates/}. Every page knows besides its own model: {@code actor},
 * {@code may} (what they may do, by the permission's name in small letters), {@code csrf}, {@code
 * nav}, {@code site}, {@code units}, {@code path}, {@code message} (left by the request before) and
 * {@code assets}. One object serves all request threads.
 */
public final class Page {
  private final String site;
  private final List<NavItem> nav;
  private final Assets assets = new Assets();
  private final TemplateEngine engine = new TemplateEngine();

  /**
   * @param site what the top of every page calls this installation; may be empty
   * @param nav in the order shown
   */
  public Page(String site, List<NavItem> nav) {
    this.site = site;
    this.nav = List.copyOf(nav);
    ClassLoaderTemplateResolver resolver = new ClassLoaderTemplateResolver();
    resolver.setPrefix("templates/");
    resolver.setSuffix(".html");
    resolver.setTemplateMode(TemplateMode.HTML);
    resolver.setCharacterEncoding("UTF-8");
    resolver.setCacheable(true);
    engine.setTemplateResolver(resolver);
  }

  public void show(Context http, String template, Map<String, ?> model) {
    show(http, 200, template, model);
  }

  /**
   * @param template {@code feature/page}, without the ending
   */
  public void show(Context http, int status, String template, Map<String, ?> model) {
    http.status(status).html(engine.process(template, context(http, model)));
  }

  /** Shows one {@code th:fragment} of a template alone, for a script that asked for just that. */
  public void part(
      Context http, int status, String template, String fragment, Map<String, ?> model) {
    String html = engine.process(template, Set.of(fragment), context(http, model));
    http.status(status).html(html);
  }

  /** Goes on to another page after something was stored, which shows the message once. */
  public void go(Context http, String path, String message) {
    Session.leave(http, message);
    go(http, path);
  }

  public void go(Context http, String path) {
    http.redirect(path, HttpStatus.SEE_OTHER);
  }

  private WebContext context(Context http, Map<String, ?> model) {
    JakartaServletWebApplication application =
        JakartaServletWebApplication.buildApplication(http.req().getServletContext());
    WebContext context =
        new WebContext(application.buildExchange(http.req(), http.res()), Locale.ENGLISH);
    context.setVariables(common(http));
    context.setVariables(new HashMap<>(model));
    return context;
  }

  private Map<String, Object> common(Context http) {
    Map<String, Object> common = new HashMap<>();
    Actor actor = Session.actor(http);
    common.put("actor", actor);
    common.put("may", may(actor));
    common.put("nav", new Nav(nav.stream().filter(item -> sees(actor, item)).toList()));
    common.put("csrf", lazily(() -> Session.token(http)));
    common.put("message", lazily(() -> Session.message(http)));
    common.put("site", site);
    common.put("units", UnitsShown.of(http));
    common.put("path", pathWithQuery(http));
    common.put("assets", assets);
    return common;
  }

  private static boolean sees(@Nullable Actor actor, NavItem item) {
    return actor != null && actor.may(item.needs());
  }

  private static Map<String, Boolean> may(@Nullable Actor actor) {
    return Stream.of(Permission.values())
        .collect(
            Collectors.toMap(
                permission -> permission.name().toLowerCase(Locale.ROOT),
                permission -> actor != null && actor.may(permission)));
  }

  /** Read only when the page uses it: reading a token makes a session, a message is read once. */
  private static LazyContextVariable<@Nullable String> lazily(Supplier<@Nullable String> value) {
    return new LazyContextVariable<>() {
      @Override
      protected @Nullable String loadValue() {
        return value.get();
      }
    };
  }

  static String pathWithQuery(Context http) {
    String query = http.queryString();
    return http.req().getRequestURI() + (query == null ? "" : "?" + query);
  }

  /** The address of a style sheet, script or picture, with the hash of its content. */
  public String asset(String path) {
    return assets.address(path);
  }

  Assets assets() {
    return assets;
  }
}
