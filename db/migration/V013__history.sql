-- Known time is asked of many changes at once; the bodies of their entries must not be read for it.
CREATE INDEX journal_entry_known ON journal_entry (change_id, seq);
