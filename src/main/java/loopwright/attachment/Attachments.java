package loopwright.attachment;

import java.util.List;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import org.jooq.DSLContext;

/** Keeps files with records and hands them out unchanged, or not at all. */
public final class Attachments {
  private final AttachmentStore store = new AttachmentStore();

  /**
   * @return its number
   * @throws Refused {@link AttachmentProblem#KEPT_ALREADY} if the record holds that very file
   */
  long keep(Tx tx, Owner owner, NewAttachment fresh) {
    same(tx.sql(), owner, fresh)
        .ifPresent(
            kept -> {
              throw new Refused(AttachmentProblem.KEPT_ALREADY, kept.fileName());
            });
    return store.add(tx, owner, fresh);
  }

  /**
   * Keeps a photograph with a record.
   *
   * @param name ending as its type wants; a path before it is dropped
   * @return its number; that of the very same picture, if the record holds it already
   * @throws Refused if it can't be taken
   */
  public long keepPhoto(Tx tx, Owner owner, String name, byte[] content, String note) {
    NewAttachment fresh = NewAttachment.of(AttachmentKind.PHOTO, name, content, note);
    return same(tx.sql(), owner, fresh)
        .map(Attachment::id)
        .orElseGet(() -> store.add(tx, owner, fresh));
  }

  private Optional<Attachment> same(DSLContext sql, Owner owner, NewAttachment fresh) {
    return of(sql, owner.kind(), owner.number()).stream()
        .filter(kept -> kept.sha256().equals(fresh.sha256()))
        .findFirst();
  }

  /** Of one record, newest first. */
  public List<Attachment> of(DSLContext sql, OwnerKind kind, long owner) {
    return store.of(sql, kind, owner);
  }

  int count(DSLContext sql, OwnerKind kind, long owner) {
    return store.count(sql, kind, owner);
  }

  Optional<Attachment> one(DSLContext sql, long id) {
    return store.one(sql, id);
  }

  /**
   * The content, byte by byte as it came.
   *
   * @throws Refused {@link AttachmentProblem#DAMAGED} if it isn't
   */
  public byte[] content(DSLContext sql, Attachment attachment) {
    byte[] content = store.content(sql, attachment.sha256());
    if (!NewAttachment.sha256(content).equals(attachment.sha256())) {
      throw new Refused(AttachmentProblem.DAMAGED, attachment.fileName());
    }
    return content;
  }
}
