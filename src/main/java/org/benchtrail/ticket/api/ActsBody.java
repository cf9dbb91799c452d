package org.benchtrail.ticket.api;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.platform.form.PostedJson;
import org.benchtrail.ticket.Act;
import org.benchtrail.trail.FactJson;
import org.jspecify.annotations.Nullable;

/** Reads the body of a request that acts: one fact, or an array of facts. Each problem names its field. */
final class ActsBody {
    /** More in one request are refused; a whole ticket takes some fifty. */
    static final int MOST = 500;

    private static final PostedJson JSON = new PostedJson(FactJson.forRequests(), "fact");

    private ActsBody() {}

    /** @throws Invalid with fields such as {@code note}, in an array {@code [2].note} */
    static List<Act> read(@Nullable JsonNode body) {
        if (body == null || !body.isContainerNode() || body.isEmpty() || (body.isArray() && body.size() > MOST)) {
            throw new Invalid("body", "Send one fact with its kind, or an array of 1 to " + MOST + " facts.");
        }
        if (!body.isArray()) {
            return List.of(act(fact(body, "")));
        }
        List<Act> acts = new ArrayList<>();
        for (int i = 0; i < body.size(); i++) {
            acts.add(act(fact(body.get(i), "[" + i + "]")));
        }
        return acts;
    }

    private static Act act(Fact fact) {
        return sheet -> fact;
    }

    private static Fact fact(JsonNode node, String place) {
        String prefix = place.isEmpty() ? "" : place + ".";
        if (!node.isObject()) {
            throw new Invalid(prefix + "kind", "A fact is a JSON object with its kind.");
        }
        return posted(JSON.read(node, Fact.class, place), prefix);
    }

    /** @throws Invalid if only the server itself records such a fact, or something it says */
    private static Fact posted(Fact fact, String prefix) {
        FactKinds.serverOnly(fact).forEach((field, sentence) -> {
            throw new Invalid(prefix + field, sentence);
        });
        return fact;
    }
}
