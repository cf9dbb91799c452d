package org.benchtrail.demo;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Role;
import org.benchtrail.ticket.NewTicket;
import org.jspecify.annotations.Nullable;

/**
 * One scenario file.
 *
 * @param name its stable name: what was loaded under it once is not loaded again
 * @param accounts people it needs; those that exist already are left as they are
 * @param tickets tickets with everything that was done on them
 */
record Scenario(String name, List<Person> accounts, List<Job> tickets) {

    record Person(String login, String name, Set<Role> roles) {}

    /** A ticket: who opened it, the report, and the acts in their order. */
    record Job(String by, NewTicket report, List<Deed> acts) {}

    /**
     * An act.
     *
     * @param as a name for its entry, by which later acts refer to it as {@code @name}
     * @param fact the fact with its kind, references not yet resolved
     * @param line where it stands in the file
     */
    record Deed(String by, @Nullable String as, ObjectNode fact, int line) {}
}
