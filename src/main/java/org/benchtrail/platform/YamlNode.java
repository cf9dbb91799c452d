package org.benchtrail.platform;

import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A YAML document as a tree that remembers the row of everything, so that a mistake can be shown where it is. Scalars keep
 * their text: "no" stays "no".
 *
 * @param row line in the file, from 1
 * @param named line of its name; its own if it has none
 * @param text of a scalar; null for a map, a list or an empty value
 * @param fields of a map; null otherwise
 * @param items of a list; null otherwise
 */
public record YamlNode(
        int row,
        int named,
        @Nullable String text,
        @Nullable Map<String, YamlNode> fields,
        @Nullable List<YamlNode> items) {
    /** Deep enough for any file of ours, and shallow enough for the stack. */
    private static final int MOST_DEPTH = 40;

    private static final YAMLFactory FACTORY = YAMLFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    /** @throws IOException if it is not YAML, names a key twice, refers to anchors, or is too deep */
    public static YamlNode parse(String yaml) throws IOException {
        try (YAMLParser parser = FACTORY.createParser(yaml)) {
            parser.nextToken();
            YamlNode node = node(parser, 0, 1);
            if (parser.nextToken() != null) {
                throw new JsonParseException(parser, "keep to one document");
            }
            return node;
        }
    }

    private static YamlNode node(YAMLParser parser, int depth, int named) throws IOException {
        if (depth > MOST_DEPTH || parser.isCurrentAlias()) {
            throw new JsonParseException(parser, "leave out references and deep nesting");
        }
        int row = parser.currentTokenLocation().getLineNr();
        JsonToken token = parser.currentToken();
        if (token == JsonToken.START_OBJECT) {
            return new YamlNode(row, named, null, fields(parser, depth), null);
        }
        if (token == JsonToken.START_ARRAY) {
            return new YamlNode(row, named, null, null, items(parser, depth));
        }
        boolean empty = token == null || token == JsonToken.VALUE_NULL;
        return new YamlNode(row, named, empty ? null : parser.getText(), null, null);
    }

    private static Map<String, YamlNode> fields(YAMLParser parser, int depth) throws IOException {
        Map<String, YamlNode> fields = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            int named = parser.currentTokenLocation().getLineNr();
            parser.nextToken();
            fields.put(name, node(parser, depth + 1, named));
        }
        return fields;
    }

    private static List<YamlNode> items(YAMLParser parser, int depth) throws IOException {
        List<YamlNode> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            items.add(node(parser, depth + 1, parser.currentTokenLocation().getLineNr()));
        }
        return items;
    }

    public boolean isEmpty() {
        return text == null && fields == null && items == null;
    }
}
