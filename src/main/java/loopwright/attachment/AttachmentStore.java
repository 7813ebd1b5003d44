package loopwright.attachment;

import static loopwright.db.gen.Tables.ATTACHMENT;
import static loopwright.db.gen.Tables.ATTACHMENT_PIECE;
import static loopwright.db.gen.Tables.CHANGE;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.AttachmentRecord;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;

/** Files and their contents. Insert-only. */
final class AttachmentStore {
  /** The embedded engine keeps at most 1 MiB in a cell. */
  private static final int PIECE = 512 << 10;

  long add(Tx tx, Owner owner, NewAttachment fresh) {
    keepContent(tx, fresh);
    AttachmentRecord row = tx.row(ATTACHMENT);
    row.setOwnerKind(owner.kind().word());
    row.setOwnerId(owner.number());
    row.setKind(fresh.kind().word());
    row.setFileName(fresh.fileName());
    row.setMediaType(fresh.type().word());
    row.setByteCount(fresh.content().length);
    row.setSha256(fresh.sha256());
    row.setNote(fresh.note());
    return tx.insert(row).getId();
  }

  /** Each content once, however often it is attached; another that comes first does no harm. */
  private static void keepContent(Tx tx, NewAttachment fresh) {
    byte[] content = fresh.content();
    for (int from = 0, piece = 0; from < content.length; from += PIECE, piece++) {
      tx.sql()
          .insertInto(
              ATTACHMENT_PIECE,
              ATTACHMENT_PIECE.SHA256,
              ATTACHMENT_PIECE.PIECE_NO,
              ATTACHMENT_PIECE.CONTENT)
          .values(
              fresh.sha256(),
              (short) piece,
              Arrays.copyOfRange(content, from, Math.min(from + PIECE, content.length)))
          .onConflictDoNothing()
          .execute();
    }
  }

  Optional<Attachment> one(DSLContext sql, long id) {
    return fetch(sql, ATTACHMENT.ID.eq(id)).stream().findFirst();
  }

  List<Attachment> of(DSLContext sql, OwnerKind kind, long owner) {
    return fetch(sql, ATTACHMENT.OWNER_KIND.eq(kind.word()).and(ATTACHMENT.OWNER_ID.eq(owner)));
  }

  int count(DSLContext sql, OwnerKind kind, long owner) {
    return sql.fetchCount(
        ATTACHMENT, ATTACHMENT.OWNER_KIND.eq(kind.word()), ATTACHMENT.OWNER_ID.eq(owner));
  }

  private static List<Attachment> fetch(DSLContext sql, Condition which) {
    return sql.select(ATTACHMENT.asterisk(), CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
        .from(ATTACHMENT)
        .join(CHANGE)
        .on(CHANGE.ID.eq(ATTACHMENT.CHANGE_ID))
        .where(which)
        .orderBy(ATTACHMENT.ID.desc())
        .fetch(AttachmentStore::attachment);
  }

  byte[] content(DSLContext sql, String sha256) {
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    sql.select(ATTACHMENT_PIECE.CONTENT)
        .from(ATTACHMENT_PIECE)
        .where(ATTACHMENT_PIECE.SHA256.eq(sha256))
        .orderBy(ATTACHMENT_PIECE.PIECE_NO)
        .fetch(ATTACHMENT_PIECE.CONTENT)
        .forEach(whole::writeBytes);
    return whole.toByteArray();
  }

  private static Attachment attachment(Record row) {
    return new Attachment(
        row.get(ATTACHMENT.ID),
        OwnerKind.named(row.get(ATTACHMENT.OWNER_KIND)).orElseThrow(),
        row.get(ATTACHMENT.OWNER_ID),
        row.get(ATTACHMENT.KIND),
        row.get(ATTACHMENT.FILE_NAME),
        MediaType.ofWord(row.get(ATTACHMENT.MEDIA_TYPE)),
        row.get(ATTACHMENT.BYTE_COUNT),
        row.get(ATTACHMENT.SHA256),
        row.get(ATTACHMENT.NOTE),
        Objects.requireNonNull(row.get(CHANGE.ACTOR_NAME)),
        row.get(CHANGE.MADE_AT).toInstant());
  }
}
