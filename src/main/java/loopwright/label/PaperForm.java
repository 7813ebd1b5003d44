package loopwright.label;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import loopwright.problem.Refused;
import loopwright.units.Numbers;
import loopwright.web.Form;

/** The fields in which somebody says what labels are printed on. */
final class PaperForm {
  static final String SHEET = "sheet";
  static final String SINGLE = "single";

  private static final Map<String, String> USUAL =
      Map.of(
          "paper", SHEET, "columns", "3", "rows", "8", "start", "1", "side", "0", "top", "0", "gap",
          "0", "width", "62", "height", "29");

  private PaperForm() {}

  static Map<String, String> papers() {
    Map<String, String> papers = new LinkedHashMap<>();
    papers.put(SHEET, "A4 sheets of labels");
    papers.put(SINGLE, "single labels, one a page");
    return papers;
  }

  /** Fills in what is usual where nothing was said. */
  static Form filled(Form form) {
    USUAL.forEach(
        (field, usual) -> {
          if (form.every(field).isEmpty()) {
            form.put(field, usual);
          }
        });
    return form;
  }

  /** Empty when something is wrong; complaints stay with the form. */
  static Optional<Paper> read(Form form) {
    try {
      return Optional.of(form.typed("paper").equals(SINGLE) ? single(form) : sheet(form))
          .filter(paper -> form.ok());
    } catch (Refused refused) {
      if (form.ok()) {
        form.complain(refused);
      }
      return Optional.empty();
    }
  }

  private static Paper single(Form form) {
    return new Paper.Single(
        number(form, "width", "The width"), number(form, "height", "The height"));
  }

  private static Paper sheet(Form form) {
    double gap = number(form, "gap", "The space between labels");
    return new Paper.Sheet(
        whole(form, "columns", "The number of columns"),
        whole(form, "rows", "The number of rows"),
        whole(form, "start", "The place to start at"),
        number(form, "side", "The margin at the sides"),
        number(form, "top", "The margin above and below"),
        gap,
        gap,
        form.chosen("outlined", "yes"));
  }

  private static double number(Form form, String field, String what) {
    Double read =
        form.read(
            field,
            typed ->
                Numbers.read(typed)
                    .map(Number::doubleValue)
                    .orElseThrow(
                        () ->
                            new Refused(
                                LabelProblem.BAD_NUMBER,
                                what,
                                "“" + typed + "”",
                                "a number of mm")));
    return read == null ? 0 : read;
  }

  private static int whole(Form form, String field, String what) {
    Integer read =
        form.read(
            field,
            typed -> {
              if (!typed.strip().matches("\\d{1,4}")) {
                throw new Refused(
                    LabelProblem.BAD_NUMBER, what, "“" + typed + "”", "a whole number from 1");
              }
              return Integer.valueOf(typed.strip());
            });
    return read == null ? 1 : read;
  }
}
