package org.benchtrail.audit;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.audit.AuditAct;

/** Acts of an audit as they are stored: the record as JSON, its free words beside it. */
final class ActJson {
    private static final String REMARK = "remark";
    private static final Map<String, Class<? extends AuditAct>> KINDS = AuditAct.kinds();
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .disable(SerializationFeature.WRITE_DURATIONS_AS_TIMESTAMPS)
            .build();

    private ActJson() {}

    static String body(AuditAct act) {
        ObjectNode tree = MAPPER.valueToTree(act);
        tree.remove(REMARK);
        return tree.toString();
    }

    /** @throws IllegalArgumentException if it is no act of that kind */
    static AuditAct read(String what, String body, String remark) {
        Class<? extends AuditAct> kind = Objects.requireNonNull(KINDS.get(what), what);
        try {
            ObjectNode tree = (ObjectNode) MAPPER.readTree(body);
            if (Arrays.stream(kind.getRecordComponents())
                    .anyMatch(c -> c.getName().equals(REMARK))) {
                tree.put(REMARK, remark);
            }
            return MAPPER.treeToValue(tree, kind);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("no act '" + what + "': " + body, e);
        }
    }
}
