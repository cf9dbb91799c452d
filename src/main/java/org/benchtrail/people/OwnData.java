package org.benchtrail.people;

import io.quarkus.runtime.Startup;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** All that is kept of the account of whoever asks, to be taken away: JSON in one file, without secrets and without others' names. */
@Startup
@Path("/me/data")
@Authenticated
public class OwnData {
    private final EntityManager database;
    private final CurrentActor current;
    private final SqlText text;

    OwnData(EntityManager database, CurrentActor current) {
        this.database = database;
        this.current = current;
        text = SqlText.of(OwnData.class).having("all");
    }

    @GET
    @Blocking
    @Transactional
    public Response all() {
        String data = Sql.of(database, text.statement("all"))
                .with("login", current.actor().account())
                .value(String.class);
        return Response.ok(data, "application/json;charset=UTF-8")
                .header("Content-Disposition", "attachment; filename=\"account.json\"")
                .build();
    }
}
