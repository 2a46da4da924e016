"""The grammar's three tables: verbs with the slots they take, nouns, prepositions."""
