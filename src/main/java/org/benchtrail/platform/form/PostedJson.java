package org.benchtrail.platform.form;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.platform.problem.Faults;

/**
 * Reads what a program posted into records, and names the field of every fault.
 *
 * @param mapper says how strictly; one that refuses unknown fields lets nothing be dropped unseen
 * @param noun what is read, such as {@code fact}: stands in the sentences
 */
public record PostedJson(ObjectMapper mapper, String noun) {
    /**
     * @param place the way to the node within the body, such as {@code [2]}; empty for the body itself
     * @throws Invalid with fields such as {@code note}, or {@code [2].note} below a place
     */
    public <T> T read(JsonNode node, Class<T> type, String place) {
        try {
            return mapper.treeToValue(node, type);
        } catch (JsonProcessingException e) {
            throw new Invalid(below(place, Faults.ofJson(e, noun)));
        }
    }

    private static List<Problem> below(String place, List<Problem> problems) {
        return place.isEmpty()
                ? problems
                : problems.stream()
                        .map(p -> new Problem(place + "." + p.field(), p.sentence()))
                        .toList();
    }
}
