CREATE INDEX gap_reading_by_change ON gap_reading (change_id);
