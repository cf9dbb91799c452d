package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** Every word that the knowledge base has, so that a mistyped one can be found. */
@ApplicationScoped
class WordList {
    private static final int ALTERNATIVES = 2;

    private final EntityManager database;
    private final SqlText sql = SqlText.of(WordList.class);

    WordList(EntityManager database) {
        this.database = database;
    }

    /** In alphabetical order, so that two who write at once wait for each other instead of locking each other out. */
    void learn(String text) {
        String[] words = SearchText.words(text).stream().distinct().sorted().toArray(String[]::new);
        Sql.of(database, sql.statement("learn")).with("words", words).run();
    }

    /** Takes out those of its words that no case and no known cause has any more. */
    void forget(String text) {
        String[] words = SearchText.words(text).stream().distinct().sorted().toArray(String[]::new);
        Sql.of(database, sql.statement("forget")).with("words", words).run();
    }

    /** Whether any word begins so. */
    boolean begins(String word) {
        return Sql.of(database, sql.statement("begins"))
                .with("beginning", word + "%")
                .value(Boolean.class);
    }

    /** The few that are spelt most like it. */
    List<String> alike(String word) {
        return Sql.of(database, sql.statement("alike"))
                .with("word", word)
                .with("most", ALTERNATIVES)
                .values(String.class);
    }
}
