package loopwright.datasheet;

import loopwright.register.ChangeNote;

/**
 * One version of a data sheet.
 *
 * @param version counted from 1
 * @param made who entered it, when and why
 */
public record DataSheet(Subject subject, int version, SheetDetails details, ChangeNote made) {}
