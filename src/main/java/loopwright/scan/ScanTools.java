package loopwright.scan;

import java.time.InstantSource;
import loopwright.loop.Configuration;
import loopwright.loop.Judging;
import loopwright.loop.PartFacts;
import loopwright.loop.Proposed;
import loopwright.matching.RuleBook;
import loopwright.plant.Plant;
import loopwright.register.FamilyBook;
import loopwright.register.PartSearch;
import loopwright.register.Register;

/** What the scan check judges and looks with. */
public record ScanTools(
    Judging judging,
    Configuration configuration,
    Proposed proposed,
    PartFacts parts,
    RuleBook rules,
    FamilyBook families,
    PartSearch search,
    InstantSource clock) {

  Telling telling(Register register, Plant plant) {
    ScanCheck check = new ScanCheck(judging, configuration, register, plant, clock);
    return new Telling(
        check, new Fetching(register, families, search, parts, rules), search, proposed);
  }
}
