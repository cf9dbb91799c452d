package org.benchtrail.trail;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import org.benchtrail.core.integrity.Commitment;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.FreeText;
import org.jspecify.annotations.Nullable;

/**
 * Somebody's own words in an entry. What is hashed holds <code>{"committed":"…"}</code> in their place, the commitment of {@link
 * Commitment} by the name {@code kind/pointer}; the words stand beside it with their salts, by their JSON pointers (RFC 6901), and can
 * be erased.
 */
final class WrittenWords {
    private static final String COMMITTED = "committed";
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final TypeReference<TreeMap<String, SaltedWords>> ALL = new TypeReference<>() {};

    private WrittenWords() {}

    /** Words that are not those that were committed to. */
    static final class Altered extends IllegalArgumentException {
        private static final long serialVersionUID = 1;

        Altered(String sentence) {
            super(sentence);
        }
    }

    /** Puts commitments in place of the words of a fact; empty texts stay, as they say nothing of anybody. */
    static SortedMap<String, SaltedWords> hide(Fact fact, ObjectNode payload, RandomGenerator chance) {
        SortedMap<String, SaltedWords> hidden = new TreeMap<>();
        new Hiding(FactKinds.name(fact.getClass()), hidden, chance).below(fact, payload, "");
        return hidden;
    }

    private record Hiding(String kind, SortedMap<String, SaltedWords> hidden, RandomGenerator chance) {
        private void record(Record record, JsonNode node, String pointer) {
            for (RecordComponent component : record.getClass().getRecordComponents()) {
                String name = component.getName();
                Object value = FactKinds.value(record, component);
                if (value == null || !(node instanceof ObjectNode object)) {
                    continue;
                }
                if (!component.isAnnotationPresent(FreeText.class)) {
                    below(value, node.path(name), pointer + "/" + name);
                } else if (!((String) value).isEmpty()) {
                    object.set(name, committed(pointer + "/" + name, (String) value));
                }
            }
        }

        private void below(Object value, JsonNode node, String pointer) {
            if (value instanceof Record record) {
                record(record, node, pointer);
            } else if (value instanceof List<?> list && node instanceof ArrayNode array) {
                for (int i = 0; i < array.size(); i++) {
                    below(list.get(i), array.get(i), pointer + "/" + i);
                }
            }
        }

        private JsonNode committed(String pointer, String value) {
            byte[] salt = Commitment.secret(chance);
            hidden.put(pointer, new SaltedWords(SaltedWords.spelling(salt), value));
            return MAPPER.createObjectNode()
                    .put(COMMITTED, Commitment.of(salt, kind + pointer, value).hex());
        }
    }

    /**
     * Puts words back where they were.
     *
     * @param payload of an entry, which is changed
     * @return whether some of them are not there, so that {@link FreeText#ERASED} stands in their place
     * @throws Altered if there are others than were committed to
     */
    static boolean show(JsonNode payload, Map<String, SaltedWords> words) {
        Set<String> left = new HashSet<>(words.keySet());
        boolean lacking = new Showing(payload.path("kind").asText(), words, left).below(payload, "");
        if (!left.isEmpty()) {
            throw new Altered("words at " + left + " where none were committed to");
        }
        return lacking;
    }

    private record Showing(String kind, Map<String, SaltedWords> words, Set<String> left) {
        private boolean below(JsonNode node, String pointer) {
            boolean lacking = false;
            if (node instanceof ObjectNode object) {
                for (Map.Entry<String, JsonNode> field : object.properties()) {
                    lacking |= one(field.getValue(), pointer + "/" + field.getKey(), field::setValue);
                }
            } else if (node instanceof ArrayNode array) {
                for (int i = 0; i < array.size(); i++) {
                    int at = i;
                    lacking |= one(array.get(i), pointer + "/" + i, text -> array.set(at, text));
                }
            }
            return lacking;
        }

        private boolean one(JsonNode value, String pointer, Consumer<JsonNode> put) {
            if (!isCommitment(value)) {
                return below(value, pointer);
            }
            SaltedWords word = words.get(pointer);
            if (word == null) {
                put.accept(TextNode.valueOf(FreeText.ERASED));
                return true;
            }
            left.remove(pointer);
            if (!Commitment.of(Base64.getUrlDecoder().decode(word.salt()), kind + pointer, word.value())
                    .hex()
                    .equals(value.path(COMMITTED).asText())) {
                throw new Altered("other words at " + pointer + " than were committed to");
            }
            put.accept(TextNode.valueOf(word.value()));
            return false;
        }
    }

    private static boolean isCommitment(JsonNode node) {
        return node.isObject() && node.size() == 1 && node.path(COMMITTED).isTextual();
    }

    /** As they are stored; null if there are none. */
    static byte @Nullable [] write(SortedMap<String, SaltedWords> words) {
        try {
            return words.isEmpty() ? null : CanonicalJson.of(MAPPER.writeValueAsString(words));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("words are plain data", e);
        }
    }

    /** @throws Altered if that is nothing that was stored so */
    static SortedMap<String, SaltedWords> read(byte @Nullable [] stored) {
        try {
            SortedMap<String, SaltedWords> words = stored == null ? new TreeMap<>() : MAPPER.readValue(stored, ALL);
            if (!Arrays.equals(stored, write(words))) {
                throw new Altered("words that are not written as they were");
            }
            return words;
        } catch (IOException | IllegalArgumentException e) {
            throw new Altered("words that cannot be read");
        }
    }
}
