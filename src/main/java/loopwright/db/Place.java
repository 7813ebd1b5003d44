package loopwright.db;

import java.nio.file.Files;
import java.nio.file.Path;

/** Where a database is. */
public sealed interface Place {

  /** Shown to people. */
  String shown();

  /** For the owner, who opens the database and sets what only an owner may. */
  String url();

  /** For the program's own account, once the owner has it open. */
  String appUrl();

  /** Account that owns the tables and migrates them. */
  String owner();

  String ownerPassword();

  /** Milliseconds that a writer waits for another. */
  String LOCK_WAIT = ";LOCK_TIMEOUT=10000";

  /** An embedded database file in a folder: the normal case. */
  record Folder(Path folder) implements Place {
    /** With the default delay a killed process loses commits it had acknowledged. */
    private static final String DURABLE = ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE";

    public Path file() {
      return folder.resolve("loopwright.mv.db");
    }

    public boolean exists() {
      return Files.exists(file());
    }

    @Override
    public String shown() {
      return folder.toString();
    }

    @Override
    public String url() {
      return appUrl() + DURABLE;
    }

    @Override
    public String appUrl() {
      return "jdbc:h2:file:" + folder.toAbsolutePath().resolve("loopwright") + LOCK_WAIT;
    }

    @Override
    public String owner() {
      return "LOOPWRIGHT_OWNER";
    }

    @Override
    public String ownerPassword() {
      return "";
    }
  }

  /** An embedded database that ends with the process; for tests and for rehearsing a restore. */
  record Memory(String name) implements Place {
    @Override
    public String shown() {
      return "memory";
    }

    @Override
    public String url() {
      return appUrl() + ";DB_CLOSE_DELAY=-1";
    }

    @Override
    public String appUrl() {
      return "jdbc:h2:mem:" + name + LOCK_WAIT;
    }

    @Override
    public String owner() {
      return "LOOPWRIGHT_OWNER";
    }

    @Override
    public String ownerPassword() {
      return "";
    }
  }

  /**
   * A PostgreSQL database that somebody else keeps; the owner account must be able to make roles.
   */
  record Server(String url, String owner, String ownerPassword) implements Place {
    @Override
    public String shown() {
      return url;
    }

    @Override
    public String appUrl() {
      return url;
    }
  }
}
