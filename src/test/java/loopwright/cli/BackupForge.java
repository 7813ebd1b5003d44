package loopwright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collections;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/** Takes a backup apart and puts it together otherwise. */
final class BackupForge {
  private final Map<String, byte[]> files = new LinkedHashMap<>();

  BackupForge(Path backup) throws IOException {
    try (ZipFile zip = new ZipFile(backup.toFile())) {
      for (ZipEntry entry : Collections.list(zip.entries())) {
        files.put(entry.getName(), zip.getInputStream(entry).readAllBytes());
      }
    }
  }

  String text(String name) {
    return new String(files.get(name), UTF_8);
  }

  BackupForge change(String name, UnaryOperator<String> rewriting) {
    String was = text(name);
    String now = rewriting.apply(was);
    if (now.equals(was)) {
      throw new AssertionError("nothing to change in " + name);
    }
    files.put(name, now.getBytes(UTF_8));
    return this;
  }

  BackupForge add(String name, String content) {
    files.put(name, content.getBytes(UTF_8));
    return this;
  }

  BackupForge remove(String name) {
    files.remove(name);
    return this;
  }

  /** Makes the manifest fit the changed script. */
  BackupForge sumUp() {
    byte[] script = files.get("script.sql");
    return change(
        "manifest.json",
        manifest ->
            manifest.replaceFirst(
                "(\"name\" : \"script.sql\",\\s+\"bytes\" : )\\d+(,\\s+\"sha256\" : \")\\w+",
                "$1" + script.length + "$2" + sum(script)));
  }

  private static String sum(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }

  void write(Path backup) throws IOException {
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(backup))) {
      for (Map.Entry<String, byte[]> each : files.entrySet()) {
        zip.putNextEntry(new ZipEntry(each.getKey()));
        zip.write(each.getValue());
      }
    }
  }
}
