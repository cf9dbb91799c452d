package org.benchtrail.trail;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Random;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** The database writes a record in the same bytes as the program does, which is the reading of RFC 8785 by a library. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class CanonicalSqlTest {
    private static final long SEED = 8785;
    private static final int TIMES = 2_000;
    private static final String[] CHARACTERS = {
        "a",
        "Z",
        "0",
        " ",
        "\"",
        "\\",
        "/",
        "\n",
        "\t",
        "\r",
        "\b",
        "\f",
        "\u0001",
        "\u001f",
        "\u007f",
        "\u0085",
        "\u00e4",
        "\u2028",
        "\u20ac",
        "\ud83d\udd0b",
        "<",
        "&",
        "'"
    };

    private final Random random = new Random(SEED);

    private JsonNode value(int depth) {
        JsonNodeFactory make = JsonNodeFactory.instance;
        switch (random.nextInt(depth > 3 ? 4 : 6)) {
            case 0:
                return make.textNode(text());
            case 1:
                return make.numberNode(random.nextLong(-999_999_999_999_999L, 1_000_000_000_000_000L));
            case 2:
                return make.booleanNode(random.nextBoolean());
            case 3:
                return make.nullNode();
            case 4:
                ArrayNode array = make.arrayNode();
                random.ints(random.nextInt(5)).forEach(i -> array.add(value(depth + 1)));
                return array;
            default:
                ObjectNode object = make.objectNode();
                random.ints(random.nextInt(5)).forEach(i -> object.set(name(), value(depth + 1)));
                return object;
        }
    }

    private String text() {
        StringBuilder text = new StringBuilder();
        random.ints(random.nextInt(8), 0, CHARACTERS.length).forEach(i -> text.append(CHARACTERS[i]));
        return text.toString();
    }

    /** In ASCII, with capitals and lengths by which other orders would differ. */
    private String name() {
        return "" + (char) ('A' + random.nextInt(58)) + (random.nextBoolean() ? "x".repeat(random.nextInt(4)) : "_B");
    }

    @Test
    void aRecord_isWrittenInTheSameBytes() throws SQLException {
        try (Connection connection = TestDatabase.owner();
                PreparedStatement canonical = connection.prepareStatement("select canonical_json(cast(? as jsonb))")) {
            for (int i = 0; i < TIMES; i++) {
                String json = "{\"content\":" + value(0) + "}";
                canonical.setString(1, json);
                try (ResultSet row = canonical.executeQuery()) {
                    row.next();
                    assertEquals(new String(CanonicalJson.of(json), StandardCharsets.UTF_8), row.getString(1), json);
                }
            }
        }
    }
}
