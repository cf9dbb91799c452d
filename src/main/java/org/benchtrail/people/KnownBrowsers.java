package org.benchtrail.people;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** In which browsers an account has signed in before; the last twenty of each. */
@Startup
@ApplicationScoped
@Transactional
class KnownBrowsers {
    private final EntityManager database;
    private final Clock clock;
    private final SqlText text;

    KnownBrowsers(EntityManager database, Clock clock) {
        this.database = database;
        this.clock = clock;
        text = SqlText.of(KnownBrowsers.class).having("known", "remember", "forget old");
    }

    boolean isKnown(String login, byte[] hash) {
        return Sql.of(database, text.statement("known"))
                        .with("login", login)
                        .with("hash", hash)
                        .value(Long.class)
                > 0;
    }

    /** Answers with what the browser's cookie holds from now on. */
    String remember(long account) {
        String secret = Secrets.random();
        Sql.of(database, text.statement("remember"))
                .with("account", account)
                .with("hash", Secrets.hash(secret))
                .with("now", clock.instant())
                .run();
        Sql.of(database, text.statement("forget old")).with("account", account).run();
        return secret;
    }
}
