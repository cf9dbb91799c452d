package org.benchtrail.demo;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
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

    /** @param mentor of a trainee, by login; empty for none */
    record Person(String login, String name, Set<Role> roles, String mentor, FilePlace place) {}

    /**
     * A ticket: who opened it, the report, and the acts in their order.
     *
     * @param place of the ticket in the file
     * @param reported place of the report
     */
    record Job(String by, NewTicket report, List<Deed> acts, FilePlace place, FilePlace reported) {}

    /**
     * An act.
     *
     * @param as a name for its entry, by which later acts refer to it as {@code @name}
     * @param fact the fact with its kind, references not yet resolved
     * @param place where it stands in the file
     */
    record Deed(String by, @Nullable String as, ObjectNode fact, FilePlace place) {}

    /**
     * Where something with fields stands in the file.
     *
     * @param start the line on which it begins
     * @param fields the line of each of its fields
     */
    record FilePlace(int start, Map<String, Integer> fields) {
        /** The line of a field; of one that is not there, the start. A field may be nested: {@code loads[2].watts}. */
        int line(String field) {
            return fields.getOrDefault(field.split("[.\\[]", 2)[0], start);
        }
    }
}
