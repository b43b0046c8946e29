namespace RebuildApi.Storage.Sql;

/// <summary>Rows of the shop's own records.</summary>
internal sealed class ShopRows(Statements statements, string shop)
{
    /// <summary>The version that stands; 0 when there is none.</summary>
    public long Version<T>(string id)
        where T : class, IShopRecord<T> => statements.Number(SqlOf<T>().Version, ("shop", shop), ("id", id));

    public void Insert<T>(T value, long entry)
        where T : class, IShopRecord<T> => Run(SqlOf<T>().Insert, value, entry);

    public void Update<T>(T value, long entry)
        where T : class, IShopRecord<T> => Run(SqlOf<T>().Update, value, entry);

    private static ShopSql SqlOf<T>()
        where T : class, IShopRecord<T> => new(T.Table.Name);

    private void Run<T>(string sql, T value, long entry)
        where T : class, IShopRecord<T> => statements.Run(
            sql,
            ("shop", shop), ("id", value.Id), ("unit", value.OfUnit), ("about", value.About), ("version", value.Version), ("entry", entry));
}
