package loopwright.register;

import java.time.InstantSource;
import java.util.List;
import loopwright.db.Database;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Routes;

/** The pages of parts, families and tolerance profiles. */
public final class RegisterPages implements Pages {
  private final List<Pages> all;

  /**
   * @param panels what other features show on a part's page
   * @param onFamilies what other features show on a family's page
   */
  public RegisterPages(
      Database database,
      Page page,
      Register register,
      FamilyBook families,
      ToleranceProfiles profiles,
      PartSearch search,
      List<PartPanel> panels,
      List<FamilyPanel> onFamilies,
      InstantSource clock) {
    this.all =
        List.of(
            new PartListPages(database, page, families, search),
            new PartEditPages(database, page, register, families, clock),
            new SettingPages(database, page, register, families, clock),
            new PartPages(database, page, register, families, panels, clock),
            new FamilyPages(database, page, families, onFamilies),
            new ProfileEditPages(database, page, profiles),
            new ProfilePages(database, page, profiles, families));
  }

  @Override
  public void mount(Routes routes) {
    all.forEach(pages -> pages.mount(routes));
  }
}
