"""The tables of the book: a version in; the statements that lead from it to the next out."""

# The number by which a file says that it is a tying book: "tagB", most significant byte first.
APPLICATION = 0x74616742

# By version, from 0, which is an empty file. What is released is never changed: a new version is
# one more script. Days are ISO 8601; quantities stand as a person wrote them, with their unit.
VERSIONS = (
    """
CREATE TABLE spool (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  label TEXT NOT NULL UNIQUE,
  material TEXT NOT NULL,
  diameter TEXT NOT NULL,
  strength TEXT,
  lot TEXT,
  bought TEXT,
  length TEXT NOT NULL,
  length_nm INTEGER NOT NULL CHECK (length_nm >= 0),
  opened TEXT,
  empty TEXT,
  bad TEXT,
  remark TEXT
);
CREATE TABLE recipe (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT NOT NULL,
  text TEXT NOT NULL UNIQUE
);
CREATE TABLE batch (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  tied TEXT NOT NULL,
  who TEXT
);
CREATE TABLE leader (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  batch INTEGER NOT NULL REFERENCES batch,
  recipe INTEGER NOT NULL REFERENCES recipe,
  tied TEXT NOT NULL,
  state TEXT NOT NULL DEFAULT 'tied' CHECK (state IN ('tied', 'fished', 'given', 'discarded')),
  state_day TEXT,
  remark TEXT
);
CREATE TABLE draw (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  spool INTEGER NOT NULL REFERENCES spool,
  nm INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('tied', 'spoiled', 'measured')),
  leader INTEGER REFERENCES leader,
  section INTEGER,
  CHECK ((kind = 'measured') = (leader IS NULL) AND (leader IS NULL) = (section IS NULL))
);
CREATE UNIQUE INDEX draw_of_section ON draw (leader, section) WHERE kind = 'tied';
CREATE INDEX draw_by_spool ON draw (spool, kind, leader, nm);
CREATE INDEX draw_by_leader ON draw (leader);
CREATE INDEX leader_by_batch ON leader (batch);
CREATE INDEX leader_by_recipe ON leader (recipe);
CREATE TABLE entry (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  at TEXT NOT NULL,
  who TEXT,
  told TEXT NOT NULL DEFAULT '',
  undoes INTEGER REFERENCES entry
);
CREATE TABLE step (
  id INTEGER PRIMARY KEY,
  entry INTEGER NOT NULL REFERENCES entry,
  of TEXT NOT NULL,
  key INTEGER NOT NULL,
  was TEXT
);
CREATE INDEX step_by_entry ON step (entry);
""",
)
