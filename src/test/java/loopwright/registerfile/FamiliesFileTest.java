package loopwright.registerfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import loopwright.matching.CableUse;
import loopwright.matching.FamilyView;
import loopwright.matching.Output;
import loopwright.sheet.Complaint;
import loopwright.sheet.Complaints;
import loopwright.sheet.CsvReader;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FamiliesFileTest {
  private final Complaints complaints = new Complaints();

  private FamiliesFile read(String text) {
    return FamiliesFile.read(
        new CsvReader(1).read("fam.csv", text.getBytes(StandardCharsets.UTF_8)), complaints);
  }

  @Test
  void readsEverythingAFamilyHas() {
    FamiliesFile file =
        read(
            "family;name;maker;scale_factor_mv_mil;tip_mm;linear_range_from_mil;linear_range_to_mil;"
                + "start_volts;probe_lengths_m;cable_lengths_ft;system_lengths_m;cable_use;"
                + "two_cables_allowed;length_tolerance_m;connectors;target_alloy;output;profile;"
                + "interchangeable_with;interchangeable_said_by;note\n"
                + "R8;Radial 8;Aster;200;8;10;90;-2;0,5 1,0;10|12,5;5;Required;no;0,1;miniature;4140;"
                + "mA;api670-2mm;q11;A. Fitter;kept\nQ11\n");
    assertThat(complaints.kept()).isEmpty();
    FamilyRow row = file.families().get(0);
    FamilyView view = row.view();
    assertThat(view.code()).isEqualTo("R8");
    assertThat(view.scaleFactor()).isEqualTo(ScaleFactor.millivoltsPerMil("200"));
    assertThat(view.tipMillimetres()).isEqualByComparingTo("8");
    assertThat(view.leadLengths()).containsExactly(Length.ofMetres("0.5"), Length.ofMetres("1"));
    assertThat(view.cableLengths())
        .containsExactly(Length.ofMetres("3.048"), Length.ofMetres("3.81"));
    assertThat(view.cableUse()).isEqualTo(CableUse.REQUIRED);
    assertThat(view.forbidsTwoCables()).isTrue();
    assertThat(view.lengthTolerance()).isEqualTo(Length.ofMetres("0.1"));
    assertThat(view.output()).isEqualTo(Output.CURRENT);
    assertThat(row.startVolts()).isEqualTo(new BigDecimal("-2"));
    assertThat(row.rangeTo()).hasToString("90 mil");
    assertThat(row.profile()).isEqualTo("api670-2mm");
    assertThat(row.twoCablesAllowed()).isFalse();
    assertThat(file.families().get(1).view().cableUse()).isEqualTo(CableUse.OPTIONAL);
    assertThat(file.forRules().pair("R8", "Q11")).get().extracting("saidBy").isEqualTo("A. Fitter");
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '~',
      textBlock =
          """
          family,probe_lengths_m ~ R8,0.5 400 ~ row 2, column probe_lengths_m: '400' can't be the length
          family,probe_lengths_m ~ R8,"0.5,1.0" ~ column probe_lengths_m: '0.5,1.0' is not a list
          family,cable_use ~ R8,never ~ 'never' is not one of none, optional, required. Did you mean 'none'?
          family,length_tolerance_m ~ R8,1.5 ~ '1.5' can't be a length tolerance
          family,scale_factor_mv_um ~ R8,200 ~ '200' can't be a scale factor
          family,tip_mm ~ R8,0.8 ~ '0.8' can't be the diameter of a tip
          family,tip_mm ~ ,8 ~ row 2, column family: the cell is empty
          family,interchangeable_with,interchangeable_said_by ~ R8,R9,me ~ there is no family 'R9' in this file. Did you mean 'R8'?
          family,interchangeable_with ~ R8,R8 ~ Name who says
          family,lead_lengths_m ~ R8,1 ~ there is no column 'lead_lengths_m'. Did you mean
          name ~ R8 ~ the column 'family' is missing
          """)
  void saysWhatIsWrong(String headings, String row, String message) {
    read(headings + "\n" + row + "\n");
    assertThat(complaints.kept())
        .extracting(Complaint::message)
        .anySatisfy(said -> assertThat(said).contains(message));
  }

  @Test
  void refusesACodeThatStandsTwice() {
    read("family\nR8\nr8\n");
    assertThat(complaints.kept())
        .extracting(Complaint::message)
        .containsExactly(
            "fam.csv, row 3, column family: the family 'r8' stands already in row 2. Remove one, or"
                + " correct its code.");
  }
}
