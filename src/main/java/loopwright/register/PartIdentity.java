package loopwright.register;

import java.util.Locale;
import loopwright.problem.Refused;
import loopwright.problem.Text;

/**
 * By what a part is known: maker, model and serial; a part without a readable serial by its shop
 * number alone, which the shop gives once. Serials are text: zeros at the front count, capitals do
 * not.
 *
 * @param serial as stamped; empty if there is none
 * @param shopNumber empty if the shop gave none
 */
public record PartIdentity(String maker, String model, String serial, String shopNumber) {

  /** Refuses a part with neither serial nor shop number. */
  public PartIdentity {
    maker = oneBlank(Text.needed("the maker", maker, 80));
    model = oneBlank(Text.needed("the model", model, 80));
    serial = Text.kept("the serial", serial, 60);
    shopNumber = Text.kept("the shop number", shopNumber, 60);
    if (serial.isEmpty() && shopNumber.isEmpty()) {
      throw new Refused(RegisterProblem.NO_NAME);
    }
  }

  private static String oneBlank(String text) {
    return text.replaceAll("\\s+", " ");
  }

  /** What a person calls the part: its serial, else its shop number. */
  public String label() {
    return serial.isEmpty() ? shopNumber : serial;
  }

  public boolean hasSerial() {
    return !serial.isEmpty();
  }

  /** Equal for two spellings of one part. */
  public String key() {
    String key = hasSerial() ? part(maker) + "|" + part(model) + "|" + serial : "#" + shopNumber;
    return key.toUpperCase(Locale.ROOT);
  }

  private static String part(String text) {
    return text.replace("|", "||");
  }
}
