package org.benchtrail.ticket.erasure;

import io.quarkus.runtime.QuarkusApplication;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.RequesterErasure;

/**
 * {@code erase TICKET SUPERVISOR REASON...}: erases name and contact of who reported the ticket. 0 if nothing is kept of them any
 * more, 1 if it could not be done, 2 if the command was given wrongly.
 */
public class EraseCommand implements QuarkusApplication {
    private final RequesterErasure erasure;

    public EraseCommand(RequesterErasure erasure) {
        this.erasure = erasure;
    }

    @Override
    public int run(String... words) {
        try {
            String reason = String.join(" ", List.of(words).subList(3, words.length));
            RequesterErasure.Erased done = erasure.erase(TicketNumber.parse(words[1]), words[2], reason);
            System.out.println(
                    done.erased()
                            ? "Erased. Exports and backups from before still hold it: see to those who have one."
                            : "It was erased already.");
            if (done.alike() > 0) {
                System.out.println(done.alike() + " more of the same name are kept, with other contacts."
                        + " Search for the name: each has tickets of its own, and is erased by one of them.");
            }
            return 0;
        } catch (Invalid e) {
            e.problems().forEach(problem -> System.err.println(problem.sentence()));
        } catch (NotFound | IllegalArgumentException e) {
            System.err.println("There is no ticket " + words[1] + ".");
        }
        return 1;
    }
}
