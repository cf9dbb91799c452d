package org.benchtrail.platform.sql;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import org.hibernate.query.NativeQuery;

/** How the database would go about a statement. */
public final class Plan {
    private final JsonNode tree;

    private Plan(JsonNode tree) {
        this.tree = tree;
    }

    /** Within a transaction. */
    public static Plan of(Sql sql) {
        Object json = sql.query("explain (format json) ")
                .unwrap(NativeQuery.class)
                .addScalar("QUERY PLAN", String.class)
                .getSingleResult();
        try {
            return new Plan(new ObjectMapper().readTree((String) json));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(String.valueOf(json), e);
        }
    }

    /** Tables that are read from end to end. */
    public List<String> readThrough() {
        return tree.findParents("Relation Name").stream()
                .filter(node -> node.at("/Node Type").asText().endsWith("Seq Scan"))
                .map(node -> node.at("/Relation Name").asText())
                .toList();
    }

    @Override
    public String toString() {
        return tree.toPrettyString();
    }
}
