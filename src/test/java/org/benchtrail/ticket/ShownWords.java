package org.benchtrail.ticket;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;

/** An entry as a program reads it that puts the words where the commitments to them stand. */
final class ShownWords {
    private ShownWords() {}

    /** @param words by their pointers in the payload; null or missing if there are none */
    static JsonNode in(JsonNode entry, JsonNode words) {
        words.fields().forEachRemaining(word -> {
            JsonPointer pointer = JsonPointer.compile("/payload" + word.getKey());
            JsonNode text = TextNode.valueOf(word.getValue().at("/value").asText());
            JsonNode around = entry.at(pointer.head());
            if (around instanceof ArrayNode array) {
                array.set(pointer.last().getMatchingIndex(), text);
            } else {
                ((ObjectNode) around).set(pointer.last().getMatchingProperty(), text);
            }
        });
        return entry;
    }
}
