package loopwright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Which way dependencies point, and what nobody does. Rules are plain tests: fields would not run.
 */
class ArchitectureTest {
  private static final JavaClasses CODE =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("loopwright");

  private static final String[] WORDS = {
    "loopwright.units..", "loopwright.time..", "loopwright.problem..", "loopwright.numerics.."
  };
  private static final String[] TOOLS = {
    "loopwright.db..", "loopwright.web..", "loopwright.sheet..", "loopwright.print.."
  };
  private static final String[] FEATURES = {
    "loopwright.journal..",
    "loopwright.people..",
    "loopwright.plant..",
    "loopwright.register..",
    "loopwright.matching..",
    "loopwright.curve..",
    "loopwright.uncertainty..",
    "loopwright.exchange..",
    "loopwright.remedy..",
    "loopwright.cause..",
    "loopwright.symptom..",
    "loopwright.stock..",
    "loopwright.kit..",
    "loopwright.protection..",
    "loopwright.exposure..",
    "loopwright.whatif..",
    "loopwright.lengthlaw..",
    "loopwright.gapround..",
    "loopwright.registerfile..",
    "loopwright.loop..",
    "loopwright.mounting..",
    "loopwright.past..",
    "loopwright.calibration..",
    "loopwright.concession..",
    "loopwright.fieldcheck..",
    "loopwright.attachment..",
    "loopwright.trend..",
    "loopwright.drift..",
    "loopwright.standard..",
    "loopwright.dynamic..",
    "loopwright.family..",
    "loopwright.datasheet..",
    "loopwright.alloy..",
    "loopwright.circuit..",
    "loopwright.outage..",
    "loopwright.pack..",
    "loopwright.signing..",
    "loopwright.certificate..",
    "loopwright.reach..",
    "loopwright.spare..",
    "loopwright.temporary..",
    "loopwright.bypass..",
    "loopwright.closeout..",
    "loopwright.field..",
    "loopwright.label..",
    "loopwright.scan..",
    "loopwright.importing..",
    "loopwright.demo..",
    "loopwright.search..",
    "loopwright.cli.."
  };
  private static final String[] PURE = {
    "loopwright.matching..",
    "loopwright.curve..",
    "loopwright.uncertainty..",
    "loopwright.exchange..",
    "loopwright.cause..",
    "loopwright.protection..",
    "loopwright.dynamic..",
    "loopwright.trend..",
    "loopwright.numerics..",
    "loopwright.units.."
  };

  @Test
  void theRulesSawTheCode() {
    assertThat(CODE.size()).isGreaterThan(200);
  }

  @Test
  void everyPackageIsKnownToTheRules() {
    Set<String> known =
        List.of(WORDS, TOOLS, FEATURES).stream()
            .flatMap(Arrays::stream)
            .map(name -> name.replace("..", ""))
            .collect(Collectors.toSet());
    Set<String> unknown =
        CODE.stream()
            .map(JavaClass::getPackageName)
            .filter(name -> !name.equals("loopwright"))
            .filter(
                name -> known.stream().noneMatch(k -> name.equals(k) || name.startsWith(k + ".")))
            .collect(Collectors.toSet());
    assertThat(unknown).isEmpty();
  }

  @Test
  void wordsKnowNothingAboveThem() {
    noClasses()
        .that()
        .resideInAnyPackage(WORDS)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(TOOLS)
        .orShould()
        .dependOnClassesThat()
        .resideInAnyPackage(FEATURES)
        .because("units and moments must not change their meaning with a feature")
        .check(CODE);
  }

  @Test
  void toolsKnowNoFeature() {
    noClasses()
        .that()
        .resideInAnyPackage(TOOLS)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(FEATURES)
        .because("a tool serves every feature alike")
        .check(CODE);
  }

  @Test
  void noRingBetweenPackages() {
    slices()
        .matching("loopwright.(*)..")
        .should()
        .beFreeOfCycles()
        .because("a ring can only be understood, tested and changed as one lump")
        .check(CODE);
  }

  @Test
  void pureDomainKnowsNeitherDatabaseNorWeb() {
    noClasses()
        .that()
        .resideInAnyPackage(PURE)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            "org.jooq..", "io.javalin..", "loopwright.db..", "loopwright.web..", "java.sql..")
        .because("a verdict must come out the same on the command line, on a page and in a test")
        .check(CODE);
  }

  @Test
  void generatedTablesStopAtTheStores() {
    noClasses()
        .that()
        .resideOutsideOfPackage("loopwright.db..")
        .and()
        .haveSimpleNameNotEndingWith("Store")
        .and()
        .haveSimpleNameNotContaining("Rows")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("loopwright.db.gen..")
        .because("SQL lives beside the rule it serves, in one class a feature can be asked for")
        .check(CODE);
  }

  @Test
  void theDayIsHandedIn() {
    ArchRule rule =
        noClasses()
            .should()
            .callMethod(LocalDate.class, "now")
            .orShould()
            .callMethod(Instant.class, "now")
            .orShould()
            .callMethod(LocalTime.class, "now")
            .orShould()
            .callMethod(ZonedDateTime.class, "now")
            .because("a verdict must come out the same next year");
    rule.check(CODE);
  }

  @Test
  void momentsHaveAPlaceOnTheWorldsClock() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .areAssignableTo(LocalDateTime.class)
        .because("a local date-time is stored an hour off in a spring night")
        .check(CODE);
  }

  @Test
  void nothingIsCalledByAWordThatSaysNothing() {
    noClasses()
        .should()
        .haveSimpleNameEndingWith("Manager")
        .orShould()
        .haveSimpleNameEndingWith("Service")
        .orShould()
        .haveSimpleNameEndingWith("Util")
        .orShould()
        .haveSimpleNameEndingWith("Utils")
        .orShould()
        .haveSimpleNameEndingWith("Helper")
        .because("a name says what a class is for")
        .check(CODE);
  }

  @Test
  void aBrokenRuleFails() {
    ArchRule broken = classes().that().haveSimpleName("Length").should().haveSimpleName("Width");
    assertThatThrownBy(() -> broken.check(CODE)).isInstanceOf(AssertionError.class);
  }
}
