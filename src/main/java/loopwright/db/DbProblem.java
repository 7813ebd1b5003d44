package loopwright.db;

import loopwright.problem.Problem;

/** Why the database could not be opened or written. */
public enum DbProblem implements Problem {
  STALE(
      "D-101",
      "Somebody else changed this after you opened it. Look at the page as it is now, then make"
          + " your change again."),
  IN_USE(
      "D-102",
      "The data folder {0} is in use by another Loopwright. Stop that one first, or use its pages."),
  OTHER_SCHEMA(
      "D-103",
      "The database in {0} was made by another, unreleased version of the program: {1}. Open it"
          + " with that version, take a backup there, and ask for a way over."),
  OTHER_ENGINE(
      "D-104",
      "The database in {0} was written by engine {1}; this program carries {2}. Take a backup with"
          + " the program that wrote it and restore that backup with this one."),
  OTHER_PURPOSE(
      "D-105", "The data folder {0} holds a {1} database, not a {2} one. Choose another folder."),
  NOT_EMPTY(
      "D-106",
      "The folder {0} is not empty. Give a new or empty folder, so nothing is overwritten."),
  NO_DATABASE("D-107", "There is no Loopwright database in {0}. Check the folder."),
  BROKEN_BACKUP("D-108", "{0} is not a backup that can be restored: {1}."),
  NOT_FOUND("D-109", "There is no {0} {1}."),
  UNREADABLE(
      "D-110",
      "The database in {0} can't be read: {1} Keep it as it is, and restore the latest backup into"
          + " another folder."),
  FILE_EXISTS("D-111", "{0} exists already, and a backup overwrites nothing. Choose another name."),
  NO_FOLDER("D-112", "There is no folder {0}. Make it, or choose another one."),
  SERVERS_OWN(
      "D-113",
      "This database is kept by a database server. Back it up with the server's own tools."),
  UNWRITABLE("D-114", "{0} can't be written: {1}. Nothing was left there."),
  BUSY(
      "D-115",
      "Others are writing much just now, an import for instance. Nothing was changed; try again in a"
          + " minute."),
  AT_ONCE(
      "D-116",
      "Somebody else changed the same things at the same moment, and only one of you could be"
          + " served. Nothing of yours was stored; look at it again and repeat it."),
  MEANWHILE(
      "D-117",
      "Somebody did the same at the same moment ({0}), and it can be done only once. Nothing of"
          + " yours was stored; look at it again: it may be done already.");

  private final String code;
  private final String sentence;

  DbProblem(String code, String sentence) {
    this.code = code;
    this.sentence = sentence;
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public String sentence() {
    return sentence;
  }
}
