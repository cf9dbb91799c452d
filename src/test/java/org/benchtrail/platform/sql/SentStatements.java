package org.benchtrail.platform.sql;

import io.quarkus.hibernate.orm.PersistenceUnitExtension;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.hibernate.resource.jdbc.spi.StatementInspector;
import org.jspecify.annotations.Nullable;

/** The statements that the server sends to the database, while somebody listens. */
@PersistenceUnitExtension
@ApplicationScoped
public class SentStatements implements StatementInspector {
    /** The server says now and then that it runs, whatever else it does. */
    private static final String BY_ITSELF = "update server_node";

    private final transient ConcurrentLinkedQueue<String> sent = new ConcurrentLinkedQueue<>();
    private volatile boolean listening;

    @Override
    public @Nullable String inspect(String sql) {
        if (listening && !sql.contains(BY_ITSELF)) {
            sent.add(sql);
        }
        return sql;
    }

    /** What is sent while that is done. */
    public List<String> during(Runnable what) {
        sent.clear();
        listening = true;
        try {
            what.run();
        } finally {
            listening = false;
        }
        return List.copyOf(sent);
    }
}
