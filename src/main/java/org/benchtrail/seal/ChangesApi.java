package org.benchtrail.seal;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import org.benchtrail.core.Invalid;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.description.AnswersWith;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestQuery;

/** What happened on all tickets, for programs that keep up with it. */
@Path("/api/changes")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Tickets")
public class ChangesApi {
    /** Shorter than what a stopping server waits for. */
    private static final int LONGEST_WAIT_S = 15;

    private static final Duration LOOK_AGAIN = Duration.ofSeconds(1);

    /** Beyond so many nobody is kept waiting: an answer without changes comes at once. */
    private static final int MOST_WAITING = 100;

    private final ChangeFeed feed;
    private final CurrentActor current;
    private final AtomicInteger waiting = new AtomicInteger();

    ChangesApi(ChangeFeed feed, CurrentActor current) {
        this.feed = feed;
        this.current = current;
    }

    @AnswersWith(ChangeFeed.Part.class)
    @GET
    @Operation(
            summary = "What happened on tickets after a number, in one order that never changes",
            description =
                    "Begin with 0 and go on with next: nothing is skipped, and nothing comes twice. An act stands here once it"
                            + " is sealed, some seconds after it was done. With wait, an answer that would be empty comes when there is"
                            + " something, or after so many seconds.")
    public Uni<ChangeFeed.Part> changes(
            @RestQuery @DefaultValue("0") long after,
            @RestQuery @DefaultValue("100") int size,
            @RestQuery @DefaultValue("0") int wait) {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        new Invalid.Collector()
                .require(after >= 0, "after", "Give 0, or what the answer before called next.")
                .require(
                        size >= 1 && size <= ChangeFeed.MOST,
                        "size",
                        "Ask for 1 to " + ChangeFeed.MOST + " changes at a time.")
                .require(wait >= 0 && wait <= LONGEST_WAIT_S, "wait", "Wait 0 to " + LONGEST_WAIT_S + " seconds.")
                .throwIfAny();
        ChangeFeed.Part now = feed.after(after, size);
        return now.isEmpty() && wait > 0 && waiting.get() < MOST_WAITING
                ? later(after, size, Duration.ofSeconds(wait))
                : Uni.createFrom().item(now);
    }

    /** Looked for every second, by no thread that stands still in between. */
    private Uni<ChangeFeed.Part> later(long after, int size, Duration wait) {
        long end = System.nanoTime() + wait.toNanos();
        waiting.incrementAndGet();
        return Uni.createFrom()
                .item(() -> feed.after(after, size))
                .runSubscriptionOn(Infrastructure.getDefaultWorkerPool())
                .repeat()
                .withDelay(LOOK_AGAIN)
                .whilst(part -> part.isEmpty() && System.nanoTime() < end)
                .collect()
                .last()
                .onTermination()
                .invoke(waiting::decrementAndGet);
    }
}
