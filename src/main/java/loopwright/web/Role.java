package loopwright.web;

import java.util.EnumSet;
import java.util.Set;

/** What a person is in the shop; it decides what they may do. */
public enum Role {
  /** Sees everything and changes nothing: an auditor, for instance. */
  VIEWER("viewer", EnumSet.of(Permission.READ)),
  TECHNICIAN("technician", EnumSet.of(Permission.READ, Permission.RECORD)),
  PLANNER("planner", EnumSet.of(Permission.READ, Permission.RECORD, Permission.PLAN)),
  ENGINEER(
      "engineer",
      EnumSet.of(Permission.READ, Permission.RECORD, Permission.PLAN, Permission.DECIDE)),
  ADMINISTRATOR(
      "administrator", EnumSet.complementOf(EnumSet.of(Permission.ANYONE, Permission.DEVICE)));

  private final String word;
  private final Set<Permission> permissions;

  Role(String word, Set<Permission> permissions) {
    this.word = word;
    this.permissions = permissions;
  }

  /** As people say it. */
  public String word() {
    return word;
  }

  public boolean may(Permission permission) {
    return permission == Permission.ANYONE || permissions.contains(permission);
  }
}
