package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;

/** Every word that the knowledge base has, so that a mistyped one can be found. */
@ApplicationScoped
class WordList {
    private final EntityManager database;

    WordList(EntityManager database) {
        this.database = database;
    }

    /** In alphabetical order, so that two who write at once wait for each other instead of locking each other out. */
    void learn(String text) {
        String[] words = SearchText.words(text).stream().distinct().sorted().toArray(String[]::new);
        database.createNativeQuery(
                        "insert into knowledge_word (word) select unnest(cast(?1 as text[])) on conflict do nothing")
                .setParameter(1, words)
                .executeUpdate();
    }
}
