package loopwright.certificate;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Evidence;
import loopwright.certificate.Report.Column;
import loopwright.certificate.Report.Fact;
import loopwright.curve.CurveDrawing;
import loopwright.curve.CurvePoint;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.curve.Finding;
import loopwright.curve.RunResult;
import loopwright.register.ToleranceProfiles;
import loopwright.signing.Signature;
import loopwright.time.SiteMoment;
import loopwright.uncertainty.Budget;
import loopwright.uncertainty.BudgetLine;
import loopwright.uncertainty.CurveUncertainty;
import loopwright.uncertainty.RunUncertainty;
import loopwright.uncertainty.Statement;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/** Makes the report of one calibration, or of an as found and an as left side by side. */
final class CertificateReport {
  private final ZoneId zone;
  private final Unit gapUnit;

  /**
   * @param zone whose clock is shown
   * @param gapUnit of the plots; tables show both
   */
  CertificateReport(ZoneId zone, Unit gapUnit) {
    this.zone = zone;
    this.gapUnit = gapUnit;
  }

  /**
   * One calibration with what surrounds it.
   *
   * @param parts it was made with exactly
   * @param place of the loop; may be empty
   */
  record Subject(Evidence evidence, List<String> parts, String place, List<Signature> signatures) {
    Calibrated record() {
      return evidence.record();
    }
  }

  /**
   * Where the printed record can be looked up.
   *
   * @param address of the record's page; empty where nobody configured one
   * @param printed when and by whom, and by which program
   */
  record Origin(Optional<String> address, String printed) {}

  Report single(Subject subject, Origin origin) {
    List<Report.Section> sections = new ArrayList<>();
    about(sections, subject);
    results(sections, subject);
    end(sections);
    return report(subject, title(subject), subject.record().number(), origin, sections);
  }

  /** As found and as left of one loop, side by side, then each in full. */
  Report pair(Subject found, Subject left, Origin origin) {
    List<Report.Section> sections = new ArrayList<>();
    sections.add(new Report.Heading("As found and as left"));
    comparison(sections, found, left);
    for (Subject each : List.of(found, left)) {
      sections.add(
          new Report.Heading(each.record().number() + ", " + each.record().stage().word()));
      about(sections, each);
      results(sections, each);
    }
    end(sections);
    String number = found.record().number() + " and " + left.record().number();
    return report(left, title(found, left), number, origin, sections);
  }

  private static String title(Subject... subjects) {
    for (Subject subject : subjects) {
      if (subject.signatures().isEmpty()) {
        return "Calibration record, not signed";
      }
    }
    return "Calibration certificate";
  }

  private static Report report(
      Subject subject, String title, String number, Origin origin, List<Report.Section> sections) {
    String hash = subject.evidence().hash();
    String code =
        origin
            .address()
            .map(address -> address + "?hash=" + hash)
            .orElse("Loopwright " + subject.record().number() + " sha256:" + hash);
    String note =
        origin.address().map(address -> "The record: " + address + ". ").orElse("")
            + "SHA-256 of "
            + subject.record().number()
            + ": "
            + hash;
    return new Report(title, number, code, note, number + " · " + origin.printed(), sections);
  }

  private static void end(List<Report.Section> sections) {
    sections.add(
        new Report.Words(
            List.of(
                "The results relate only to the parts named. No accreditation is claimed."
                    + " Protection stays with the site's procedure and its licensed people.",
                "End of the document.")));
  }

  private void about(List<Report.Section> sections, Subject subject) {
    Calibrated c = subject.record();
    Evidence evidence = subject.evidence();
    List<Fact> facts = new ArrayList<>();
    evidence
        .superseded()
        .ifPresent(s -> facts.add(new Fact("Superseded", "by " + s.by() + ": " + s.reason())));
    facts.add(where(c, subject.place()));
    facts.add(new Fact("Parts", String.join("\n", subject.parts())));
    facts.add(new Fact("Stage", c.stage().word()));
    facts.add(new Fact("Taken", shown(c) + ", by " + c.performedBy()));
    facts.add(
        new Fact(
            "Conditions",
            "gap zero: "
                + orNot(c.zero())
                + "; target: "
                + orNot(c.targetAlloy())
                + Surroundings.runOut(evidence)
                + "; temperature at the probe: "
                + Surroundings.temperature(evidence)));
    facts.add(new Fact("Procedure", orNot(evidence.conditions().procedure())));
    evidence.outsideTemperature().ifPresent(said -> facts.add(new Fact("Limits", said)));
    evidence.judgedBy().ifPresent(profile -> judgedBy(facts, profile, c));
    facts.add(new Fact("Made with", equipment(evidence)));
    facts.add(new Fact("Entered", c.enteredBy() + ": " + c.reason()));
    facts.add(new Fact("Signed", signed(subject)));
    sections.add(new Report.Facts(facts));
  }

  private static Fact where(Calibrated c, String place) {
    return switch (c.setup()) {
      case FITTED -> new Fact("Loop", c.place() + place);
      case BENCH -> new Fact("Set", "on the bench: exactly these parts, fitted at no loop");
      case STOOD_IN ->
          new Fact(
              "Set",
              "at "
                  + c.tag()
                  + place
                  + ", a part standing in: exactly these parts, not the ones fitted there");
    };
  }

  private static void judgedBy(List<Fact> facts, ToleranceProfiles.Stored stored, Calibrated c) {
    var profile = stored.profile();
    facts.add(
        new Fact(
            "Judged by",
            "%s, version %s: %s%s. ISF ±%s %% of %s each increment, DSL ±%s, line shifted to %s. Analysis version %s."
                .formatted(
                    profile.name(),
                    profile.version(),
                    profile.source(),
                    profile.edition().isEmpty() ? "" : ", " + profile.edition(),
                    Numbers.plain(profile.isfTolerancePercent()),
                    profile.nominal(),
                    profile.dslLimit(),
                    profile.shiftRule().label(),
                    c.analysisVersion())));
    facts.add(new Fact("Decision rule", stored.terms().ruleInWords()));
  }

  private static String equipment(Evidence evidence) {
    return evidence.used().isEmpty()
        ? "no measuring equipment is named"
        : String.join(
            "\n",
            evidence.used().stream()
                .map(used -> used.inWords() + ", due " + used.certificate().dueOn())
                .toList());
  }

  private String signed(Subject subject) {
    if (subject.signatures().isEmpty()) {
      return "not signed";
    }
    return String.join(
        "\n",
        subject.signatures().stream()
            .map(
                s ->
                    "%s: %s, %s; authorisation A-%s (%s)%s"
                        .formatted(
                            s.role(),
                            s.name(),
                            SiteMoment.shown(s.at(), zone) + " " + zone.getId(),
                            s.authorisation(),
                            s.basis(),
                            s.concessions().isEmpty() ? "" : "; by leave of " + s.concessions()))
            .toList());
  }

  private String shown(Calibrated c) {
    return SiteMoment.shown(c.measuredAt(), zone) + " " + zone.getId();
  }

  private static String orNot(String text) {
    return text.isEmpty() ? "not recorded" : text;
  }

  private void results(List<Report.Section> sections, Subject subject) {
    Evidence evidence = subject.evidence();
    Calibrated c = subject.record();
    if (evidence.result().isEmpty()) {
      sections.add(new Report.Heading("No curve"));
      sections.add(new Report.Words(List.of(String.valueOf(c.noCurveReason()))));
      asRead(sections, evidence.readings());
      return;
    }
    CurveResult result = evidence.result().get();
    sections.add(new Report.Heading("Result: " + verdict(evidence, result)));
    List<Fact> facts = new ArrayList<>();
    figures(result).forEach(figure -> facts.add(new Fact(figure.name(), figure.text())));
    sections.add(new Report.Facts(facts));
    sections.add(new Report.Words(result.findings().stream().map(Finding::sentence).toList()));
    sections.add(new Report.Picture(drawing(result, c, c.number())));
    sections.add(new Report.Heading("Readings"));
    sections.add(readings(result, evidence.uncertainty()));
    uncertainty(sections, evidence);
  }

  /**
   * @param id of the drawing, one a page
   */
  private String drawing(CurveResult result, Calibrated c, String id) {
    return CurveDrawing.svg(result, id, gapUnit, c.zero().isEmpty() ? "" : "zero: " + c.zero());
  }

  /** Never without what it doesn't hold for. */
  private static String verdict(Evidence evidence, CurveResult result) {
    return evidence.outsideTemperature().isPresent()
        ? byLimits(evidence, result) + ", at a temperature the limits are not for"
        : byLimits(evidence, result);
  }

  private static String byLimits(Evidence evidence, CurveResult result) {
    return evidence
        .uncertainty()
        .map(u -> Decided.worst(u.worse()))
        .map(d -> d.label() + " (" + d.guideWord() + ")")
        .orElse(result.verdict().label() + " (simple acceptance, no uncertainty stated)");
  }

  /** The results that stand before the plots, for one record and for comparing two. */
  private static List<Fact> figures(CurveResult result) {
    List<Fact> figures = new ArrayList<>();
    figures.add(new Fact("Average scale factor", Printed.slopeBoth(result.asf())));
    figures.add(
        new Fact(
            "Least-squares slope",
            Printed.slopeBoth(result.leastSquaresSlope())
                + ", standard error "
                + Printed.significant(result.leastSquaresSlopeStandardError())
                + " mV/µm ("
                + Printed.significant(
                    Unit.MILLIVOLT_PER_MIL.fromCanonical(result.leastSquaresSlopeStandardError()))
                + " mV/mil)"));
    figures.add(new Fact("Worst ISF", percent(result.worstIsfPercent()) + " of nominal"));
    figures.add(new Fact("Largest DSL", Printed.gapBoth(result.maxDsl())));
    result
        .hysteresis()
        .ifPresent(h -> figures.add(new Fact("Up to down", Printed.gapBoth(h.micrometres()))));
    figures.add(
        new Fact(
            "Linear range",
            result
                .linearRange()
                .map(
                    r ->
                        Printed.gapBoth(r.fromMicrometres())
                            + " to "
                            + Printed.gapBoth(r.toMicrometres()))
                .orElse("none")));
    figures.add(
        new Fact(
            "Mid-range gap",
            Printed.gapBoth(result.midRangeGapMicrometres())
                + volts(result.midRangeVolts())
                + " (guidance)"));
    return figures;
  }

  private static String percent(OptionalDouble percent) {
    return percent.isPresent() ? Printed.percent(percent.getAsDouble()) : "none";
  }

  private static String volts(OptionalDouble volts) {
    return volts.isPresent() ? ", " + Printed.volts(volts.getAsDouble()) + " V there" : "";
  }

  private static void asRead(List<Report.Section> sections, List<CurveReading> readings) {
    if (!readings.isEmpty()) {
      sections.add(
          new Report.Table(
              List.of(
                  Column.words("Run", 1), Column.figures("Gap", 2), Column.figures("Output", 2)),
              readings.stream()
                  .map(r -> List.of(r.run().label(), r.gap().toString(), r.output().toString()))
                  .toList()));
    }
  }

  private static Report.Table readings(CurveResult result, Optional<CurveUncertainty> stated) {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < result.runs().size(); i++) {
      int run = i;
      RunResult each = result.runs().get(i);
      Optional<RunUncertainty> known = stated.map(u -> u.runs().get(run));
      for (int at = 0; at < each.points().size(); at++) {
        int index = at;
        Optional<Statement> isf = known.flatMap(k -> k.points().get(index).judged());
        rows.add(row(result, each, each.points().get(at), isf));
      }
    }
    return new Report.Table(
        List.of(
            Column.words("Run", 0.8),
            Column.figures("Gap as typed", 1.5),
            Column.figures("µm", 1.2),
            Column.figures("mil", 1.1),
            Column.figures("Output as typed", 1.5),
            Column.figures("ISF mV/µm", 1.2),
            Column.figures("ISF mV/mil", 1.2),
            Column.figures("U 95 % mV/µm", 1.2),
            Column.figures("U 95 % mV/mil", 1.2),
            Column.figures("DSL µm", 1.1),
            Column.figures("DSL mil", 1.1),
            Column.words("ISF, DSL", 2.6)),
        rows);
  }

  private static List<String> row(
      CurveResult result, RunResult run, CurvePoint point, Optional<Statement> stated) {
    boolean hasIsf = point.isf().isPresent();
    double isf = hasIsf ? point.isf().getAsDouble() : 0;
    double deviation = point.deviationMicrometres();
    return List.of(
        run.run().label(),
        point.reading().gap().toString(),
        Printed.gapMetric(point.gapMicrometres()),
        Printed.gapMil(point.gapMicrometres()),
        point.reading().output().toString(),
        hasIsf ? Printed.slopeMetric(isf) : "",
        hasIsf ? Printed.slopeMil(isf) : "",
        stated.map(s -> Printed.slopeMetric(s.budget().expandedUncertainty())).orElse(""),
        stated.map(s -> Printed.slopeMil(s.budget().expandedUncertainty())).orElse(""),
        Printed.say("%+.2f", deviation),
        Printed.say("%+.3f", Unit.MIL.fromCanonical(deviation)),
        said(result, run, point, stated));
  }

  private static String said(
      CurveResult result, RunResult run, CurvePoint point, Optional<Statement> stated) {
    String isf =
        stated
            .map(s -> s.decision().label())
            .orElseGet(
                () ->
                    run.increments().stream()
                        .filter(step -> step.judged())
                        .filter(step -> step.span().toMicrometres() == point.gapMicrometres())
                        .findFirst()
                        .map(step -> step.conforms() ? "within" : "outside")
                        .orElse("–"));
    String dsl = "drawn only";
    if (point.judged()) {
      dsl = result.profile().dslConforms(point.deviationMicrometres()) ? "within" : "outside";
    }
    return isf + "; " + dsl;
  }

  private static void uncertainty(List<Report.Section> sections, Evidence evidence) {
    sections.add(new Report.Heading("Uncertainty and decision"));
    if (evidence.uncertainty().isEmpty()) {
      sections.add(new Report.Words(List.of(evidence.missing())));
      return;
    }
    CurveUncertainty stated = evidence.uncertainty().get();
    RunUncertainty run = stated.worse();
    sections.add(Decided.table(run));
    List<String> remarks = new ArrayList<>(stated.remarks());
    remarks.addAll(evidence.notes());
    remarks.add(
        "U is the expanded uncertainty for a coverage probability of 95 %, after JCGM 100:2008;"
            + " probabilities of conformity after JCGM 106:2012.");
    sections.add(new Report.Words(remarks));
    budget(sections, run.asf().budget());
    budget(sections, run.maxDsl().budget());
  }

  private static void budget(List<Report.Section> sections, Budget budget) {
    sections.add(new Report.Heading("Budget of the " + budget.measurand() + ", " + budget.unit()));
    List<List<String>> rows = new ArrayList<>();
    for (BudgetLine line : budget.lines()) {
      rows.add(
          List.of(
              line.name(),
              line.distribution(),
              Printed.significant(line.standardUncertainty()) + " " + line.unit(),
              Printed.significant(line.sensitivity()),
              Printed.significant(line.contribution()),
              Printed.say("%.0f %%", 100 * budget.share(line)),
              degrees(line.degreesOfFreedom())));
    }
    rows.add(
        List.of(
            "combined",
            "",
            "",
            "",
            Printed.significant(budget.standardUncertainty()),
            "",
            degrees(budget.effectiveDegreesOfFreedom())));
    rows.add(
        List.of(
            "expanded, k = " + Printed.say("%.2f", budget.coverageFactor()),
            "",
            "",
            "",
            Printed.significant(budget.expandedUncertainty()),
            "",
            ""));
    sections.add(
        new Report.Table(
            List.of(
                Column.words("Source", 2.2),
                Column.words("Distribution, spread", 2.6),
                Column.figures("u(x)", 1.2),
                Column.figures("|c|", 1),
                Column.figures("|c|·u(x)", 1.1),
                Column.figures("Share", 0.8),
                Column.figures("ν", 0.6)),
            rows));
  }

  private static String degrees(double degrees) {
    return Double.isInfinite(degrees) || degrees > 9999
        ? "infinite"
        : String.format(Locale.ROOT, "%.0f", Math.floor(degrees));
  }

  private void comparison(List<Report.Section> sections, Subject found, Subject left) {
    Optional<CurveResult> before = found.evidence().result();
    Optional<CurveResult> after = left.evidence().result();
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("Taken", shown(found.record()), shown(left.record())));
    rows.add(
        List.of(
            "Verdict",
            before
                .map(r -> verdict(found.evidence(), r))
                .orElse("no curve: " + found.record().noCurveReason()),
            after
                .map(r -> verdict(left.evidence(), r))
                .orElse("no curve: " + left.record().noCurveReason())));
    List<Fact> one = before.map(CertificateReport::figures).orElse(List.of());
    List<Fact> two = after.map(CertificateReport::figures).orElse(List.of());
    List<String> names = new ArrayList<>();
    one.forEach(fact -> names.add(fact.name()));
    two.stream().map(Fact::name).filter(name -> !names.contains(name)).forEach(names::add);
    names.forEach(name -> rows.add(List.of(name, text(one, name), text(two, name))));
    sections.add(
        new Report.Table(
            List.of(
                Column.words("", 1.4),
                Column.words("As found, " + found.record().number(), 3),
                Column.words("As left, " + left.record().number(), 3)),
            rows));
    if (before.isPresent() && after.isPresent()) {
      sections.add(
          new Report.TwoPictures(
              drawing(before.get(), found.record(), "found"),
              "As found, " + found.record().number(),
              drawing(after.get(), left.record(), "left"),
              "As left, " + left.record().number()));
    }
  }

  private static String text(List<Fact> facts, String name) {
    return facts.stream()
        .filter(fact -> fact.name().equals(name))
        .findFirst()
        .map(Fact::text)
        .orElse("");
  }
}
