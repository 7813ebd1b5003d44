package loopwright.certificate;

import java.util.List;

/**
 * All that a certificate says, as text and drawings: nothing is worked out after this.
 *
 * @param title of the document
 * @param number that it is known by
 * @param address written as QR: the record's, with its hash
 * @param addressNote said beside it
 * @param footer at the foot of each page, before the page's number
 */
record Report(
    String title,
    String number,
    String address,
    String addressNote,
    String footer,
    List<Section> sections) {

  Report {
    sections = List.copyOf(sections);
  }

  /** A part of it, in the order printed. */
  sealed interface Section permits Heading, Words, Facts, Table, Picture, TwoPictures {}

  record Heading(String text) implements Section {}

  /** Paragraphs. */
  record Words(List<String> sentences) implements Section {
    Words {
      sentences = List.copyOf(sentences);
    }
  }

  /** Names with what they are. */
  record Facts(List<Fact> facts) implements Section {
    Facts {
      facts = List.copyOf(facts);
    }
  }

  record Fact(String name, String text) {}

  /**
   * A table; its head is repeated on each page.
   *
   * @param rows as many cells as columns
   */
  record Table(List<Column> columns, List<List<String>> rows) implements Section {
    Table {
      columns = List.copyOf(columns);
      rows = List.copyOf(rows);
    }
  }

  /**
   * @param weight share of the width
   * @param figures whether its cells stand at the right
   */
  record Column(String title, double weight, boolean figures) {
    static Column words(String title, double weight) {
      return new Column(title, weight, false);
    }

    static Column figures(String title, double weight) {
      return new Column(title, weight, true);
    }
  }

  /** A drawing over the whole width. */
  record Picture(String svg) implements Section {}

  /** Two drawings side by side. */
  record TwoPictures(String leftSvg, String leftName, String rightSvg, String rightName)
      implements Section {}
}
