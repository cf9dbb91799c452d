package org.benchtrail.bench;

import java.util.Map;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.method.Actor;

/** What a ticket knows of the values that a calculation asks for; told by whoever keeps tickets. */
public interface TicketValues {
    /**
     * @param ticket as it stands in the address: a number, with the action in question after a slash
     * @return nothing if the viewer has no such ticket, or it knows none of the values
     */
    Known known(String ticket, Calculation<?> calculation, Actor viewer);

    /**
     * @param values by the path of the field
     * @param from where they come from, in words
     */
    record Known(Map<String, String> values, String from) {
        public static final Known NOTHING = new Known(Map.of(), "");

        public Known {
            values = Map.copyOf(values);
        }
    }
}
